package org.dentary.kit.chain;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.dentary.kit.KitService;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** What happened to a label as a label. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
public class LabelHistoryResource {
    private final KitService kits;
    private final LabelHistoryService histories;

    LabelHistoryResource(KitService kits, LabelHistoryService histories) {
        this.kits = kits;
        this.histories = histories;
    }

    @GET
    @Path("labels/{code}/history")
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(
            summary = "A label's issue, reprints and voiding, from its block's chain on the ledger",
            description =
                    "The chain is named by the block's id in an export, and its first event holds the digest of all"
                            + " the block's codes.")
    public Response history(@PathParam("code") String code) {
        String label = kits.label(code).code();
        return Reply.ok(histories.of(List.of(label)).get(label));
    }
}
