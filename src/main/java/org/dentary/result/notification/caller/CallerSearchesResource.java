package org.dentary.result.notification.caller;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.ItemList;

/** Finding a caller's animals; a POST, so that no name or number stands in an address or its log. */
@Path("/api/v1/caller-searches")
@Produces(MediaType.APPLICATION_JSON)
public class CallerSearchesResource {
    private final CallerService callers;

    CallerSearchesResource(CallerService callers) {
        this.callers = callers;
    }

    /** Animals by registration number, phone or name, with the words to say. */
    @POST
    @PermissionsAllowed(Act.NOTIFY)
    public Response search(@NotNull @Valid CallerSearch search) {
        return Reply.ok(new ItemList<>(callers.search(search)));
    }
}
