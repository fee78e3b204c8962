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

    DossierPages(DossierService dossiers, EvidenceService evidence) {
        this.dossiers = dossiers;
        this.evidence = evidence;
    }

    /** A photograph that was to be erased, and the reason as it was typed; both may be null. */
    record Erasing(UUID photo, String reason) {
        public boolean isOf(UUID one) {
            return one.equals(photo);
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

    /** Erases a photograph that is evidence, in every entry that shows it. */
    @POST
    @Path("{code}/custody/evidence/{id}/erasure")
    @PermissionsAllowed(Act.EVIDENCE_ERASE)
    public Response erase(@PathParam("code") String code, @PathParam("id") UUID id, @RestForm("reason") String reason) {
        try {
            evidence.erase(id, reason);
        } catch (InvalidInput fault) {
            return Response.status(fault.status())
                    .entity(Templates.dossier(dossiers.dossier(code), new Erasing(id, reason), Faults.of(fault)))
                    .build();
        }
        return Response.seeOther(UriBuilder.fromPath("/specimens/{code}/custody")
                        .fragment("events")
                        .build(code))
                .build();
    }
}
