package org.dentary.portal.find;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.ItemList;

/** Finds anything by what was scanned or typed. */
@Path("/api/v1/find")
@Produces(MediaType.APPLICATION_JSON)
public class FindResource {
    private final FindService finder;

    FindResource(FindService finder) {
        this.finder = finder;
    }

    /** What was found, at least one; else 422 where the text is no code, 404 where nothing is called so. */
    @GET
    @PermissionsAllowed(Act.READ_COMMON)
    public Response find(@QueryParam("q") String typed) {
        FindService.Found found = finder.find(typed);
        if (found.matches().isEmpty()) {
            throw switch (found.code()) {
                case "NOT_A_CODE", "NOTHING_TYPED" -> InvalidInput.field("q", found.code(), found.why());
                default -> new NotFound(found.code(), found.why());
            };
        }
        return Reply.ok(new ItemList<>(found.matches()));
    }
}
