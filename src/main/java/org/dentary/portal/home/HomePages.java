package org.dentary.portal.home;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;

/** The front door. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class HomePages {
    private final HomeService homes;

    HomePages(HomeService homes) {
        this.homes = homes;
    }

    @CheckedTemplate(basePath = "portal")
    static class Templates {
        static native TemplateInstance home(Home home);
    }

    @GET
    @PermissionsAllowed(Act.READ_COMMON)
    public Response home() {
        return Reply.ok(Templates.home(homes.home()));
    }
}
