package org.dentary.portal.stock;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.dentary.kit.AccountForKits;
import org.dentary.kit.BlockService;
import org.dentary.kit.BlockView;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** What became of kits that were not used. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
public class UnusedKitsResource {
    private final StockService stock;
    private final BlockService blocks;

    UnusedKitsResource(StockService stock, BlockService blocks) {
        this.stock = stock;
        this.blocks = blocks;
    }

    @PUT
    @Path("kit-blocks/{id}/unused-kits")
    @Consumes(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.KIT_ISSUE)
    @Operation(summary = "Kits that came back, were lost, or are at the station after all; a used one is refused")
    public Response unused(@PathParam("id") UUID id, @NotNull @Valid AccountForKits account) {
        stock.account(id, account);
        BlockView block = blocks.block(id);
        return Reply.versioned(200, block, block.version());
    }
}
