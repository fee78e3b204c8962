package org.dentary.custody;

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
public class ChainPages {
    private final CustodyService custody;

    ChainPages(CustodyService custody) {
        this.custody = custody;
    }

    @CheckedTemplate(basePath = "custody")
    static class Templates {
        static native TemplateInstance chain(CustodyView chain);
    }

    @GET
    @Path("{code}/custody")
    @PermissionsAllowed(Act.ANIMAL_READ)
    public TemplateInstance page(@PathParam("code") String code) {
        return Templates.chain(custody.chain(code));
    }
}
