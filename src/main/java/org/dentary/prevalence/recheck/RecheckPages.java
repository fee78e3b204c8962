package org.dentary.prevalence.recheck;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;

/** Checks of stored answers as a page. */
@Path("/data-cuts")
@Produces(MediaType.TEXT_HTML)
public class RecheckPages {
    private final RecheckService checks;

    RecheckPages(RecheckService checks) {
        this.checks = checks;
    }

    @CheckedTemplate(basePath = "prevalence")
    static class Templates {
        static native TemplateInstance rechecks(List<RecheckView> checks, RecheckView shown);
    }

    @GET
    @Path("rechecks")
    @PermissionsAllowed(Act.REPORT_READ)
    public TemplateInstance page(@QueryParam("check") UUID check) {
        List<RecheckView> all = checks.all();
        RecheckView shown = check != null
                ? checks.require(check)
                : all.isEmpty()
                        ? null
                        : checks.require(UUID.fromString(all.get(0).id()));
        return Templates.rechecks(all, shown);
    }

    @POST
    @Path("rechecks")
    @PermissionsAllowed(Act.DATA_CUT)
    public Response check() {
        UUID id = UUID.randomUUID();
        checks.put(id);
        return Response.seeOther(URI.create("/data-cuts/rechecks?check=" + id)).build();
    }
}
