package org.dentary.story.dossier;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.dentary.platform.account.Act;

/** The chain of one specimen or box: who has it, since when, is anything wrong; then everything that happened. */
@Path("/specimens")
@Produces(MediaType.TEXT_HTML)
public class DossierPages {
    private final DossierService dossiers;

    DossierPages(DossierService dossiers) {
        this.dossiers = dossiers;
    }

    @CheckedTemplate(basePath = "dossier")
    static class Templates {
        static native TemplateInstance dossier(Dossier dossier);
    }

    @GET
    @Path("{code}/custody")
    @PermissionsAllowed(Act.ANIMAL_READ)
    public TemplateInstance page(@PathParam("code") String code) {
        return Templates.dossier(dossiers.dossier(code));
    }
}
