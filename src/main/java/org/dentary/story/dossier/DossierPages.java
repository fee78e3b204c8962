package org.dentary.story.dossier;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import java.util.UUID;
import org.dentary.custody.evidence.EvidenceService;
import org.dentary.custody.evidence.TextErasureService;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.InvalidInput;
import org.jboss.resteasy.reactive.RestForm;

/** The chain of one specimen or box: who has it, since when, is anything wrong; then everything that happened. */
@Path("/specimens")
@Produces(MediaType.TEXT_HTML)
public class DossierPages {
    private final DossierService dossiers;
    private final EvidenceService evidence;
    private final TextErasureService texts;

    DossierPages(DossierService dossiers, EvidenceService evidence, TextErasureService texts) {
        this.dossiers = dossiers;
        this.evidence = evidence;
        this.texts = texts;
    }

    /** A photograph, or an entry of which a text was to be erased, and the reason as it was typed; both may be null. */
    record Erasing(UUID what, String reason) {
        public boolean isOf(UUID one) {
            return one.equals(what);
        }
    }

    @CheckedTemplate(basePath = "dossier")
    static class Templates {
        static native TemplateInstance dossier(Dossier dossier, Erasing erasing, Faults faults);
    }

    @GET
    @Path("{code}/custody")
    @PermissionsAllowed(Act.ANIMAL_READ)
    public TemplateInstance page(@PathParam("code") String code) {
        return Templates.dossier(dossiers.dossier(code), new Erasing(null, null), Faults.NONE);
    }

    /** Erases a text, a name or a signature of an entry, wherever the same act says the same. */
    @POST
    @Path("{code}/custody/events/{id}/erasure")
    @PermissionsAllowed(Act.EVIDENCE_ERASE)
    public Response eraseText(
            @PathParam("code") String code,
            @PathParam("id") UUID id,
            @RestForm("field") String field,
            @RestForm("reason") String reason) {
        return erased(code, new Erasing(id, reason), () -> texts.erase(id, field, reason));
    }

    /** Erases a photograph that is evidence, in every entry that shows it. */
    @POST
    @Path("{code}/custody/evidence/{id}/erasure")
    @PermissionsAllowed(Act.EVIDENCE_ERASE)
    public Response erase(@PathParam("code") String code, @PathParam("id") UUID id, @RestForm("reason") String reason) {
        return erased(code, new Erasing(id, reason), () -> evidence.erase(id, reason));
    }

    private Response erased(String code, Erasing erasing, Runnable act) {
        try {
            act.run();
        } catch (InvalidInput fault) {
            return Response.status(fault.status())
                    .entity(Templates.dossier(dossiers.dossier(code), erasing, Faults.of(fault)))
                    .build();
        }
        return Response.seeOther(UriBuilder.fromPath("/specimens/{code}/custody")
                        .fragment("events")
                        .build(code))
                .build();
    }
}
