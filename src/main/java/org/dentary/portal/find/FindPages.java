package org.dentary.portal.find;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;

/** Where the scan box leads: to the one thing meant, to a choice, or to what is wrong. */
@Path("/find")
@Produces(MediaType.TEXT_HTML)
public class FindPages {
    private final FindService finder;

    FindPages(FindService finder) {
        this.finder = finder;
    }

    @CheckedTemplate(basePath = "portal")
    static class Templates {
        static native TemplateInstance find(String typed, FindService.Found found);
    }

    @GET
    @PermissionsAllowed(Act.READ_COMMON)
    public Response find(@QueryParam("q") String typed) {
        FindService.Found found = finder.find(typed);
        if (found.matches().size() == 1) {
            return Response.seeOther(URI.create(found.matches().get(0).href())).build();
        }
        return Reply.answer(status(found), Templates.find(typed == null ? "" : typed.strip(), found));
    }

    private static int status(FindService.Found found) {
        if (!found.matches().isEmpty()) {
            return 200;
        }
        return found.code().equals("NOT_A_CODE") || found.code().equals("NOTHING_TYPED") ? 422 : 404;
    }
}
