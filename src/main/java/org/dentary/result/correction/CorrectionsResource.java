package org.dentary.result.correction;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.Page;

/** Released words that were replaced, who had the earlier one, and every try to tell them. */
@Path("/api/v1/corrections")
@Produces(MediaType.APPLICATION_JSON)
public class CorrectionsResource {
    private static final int MOST = 1_000;

    private final CorrectionService corrections;

    CorrectionsResource(CorrectionService corrections) {
        this.corrections = corrections;
    }

    /**
     * Corrections, newest first.
     *
     * @param state OPEN, DONE or SUPERSEDED; nothing for all
     * @param before the id at which the page before ended, from its Link
     */
    @GET
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response list(
            @QueryParam("state") @DefaultValue("") String state,
            @QueryParam("before") Long before,
            @QueryParam("limit") @DefaultValue("200") int limit,
            @Context UriInfo address) {
        int most = Page.size(limit, MOST);
        return Page.of(corrections.list(state, before, most + 1), most)
                .answer(address, "before", CorrectionView.Head::id);
    }

    /** One correction with who had the earlier word and every try. */
    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response one(@PathParam("id") long id) {
        return Reply.ok(corrections.correction(id));
    }

    /** Records a try to tell one of them. */
    @PUT
    @Path("{id}/recipients/{recipient}/attempts/{key}")
    @PermissionsAllowed(Act.NOTIFY)
    public Response record(
            @PathParam("id") long id,
            @PathParam("recipient") long recipient,
            @PathParam("key") UUID key,
            @NotNull @Valid RecordTry attempt) {
        CorrectionService.Recorded recorded = corrections.record(id, recipient, key, attempt);
        return Reply.versioned(recorded.fresh() ? 201 : 200, recorded.correction(), 0);
    }
}
