package org.dentary.kit;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.ETags;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.KeysetPage;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** Blocks of kits. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
public class KitBlocksResource {
    private final BlockService blocks;

    KitBlocksResource(BlockService blocks) {
        this.blocks = blocks;
    }

    /** Issues a block; 201 with all its kits and labels, 200 when sent again. */
    @PUT
    @Path("kit-blocks/{id}")
    @Consumes(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.KIT_ISSUE)
    public Response issue(
            @PathParam("id") UUID id,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch,
            @NotNull @Valid IssueBlock block) {
        BlockService.Issued issued = blocks.issue(id, block, ifMatch);
        return Response.status(issued.created() ? 201 : 200)
                .entity(blocks.contents(id))
                .header(HttpHeaders.ETAG, ETags.of(issued.block().version()))
                .build();
    }

    @GET
    @Path("kit-blocks")
    @PermissionsAllowed(Act.LABEL_PRINT)
    @Operation(summary = "The blocks of the stations that the account serves, newest first; Link leads on")
    public Response list(
            @QueryParam("season") String season,
            @Parameter(description = "Last block of the page before, from its Link") @QueryParam("before") UUID before,
            @QueryParam("limit") Integer limit,
            @Context UriInfo address) {
        int most = KeysetPage.limit(limit);
        List<BlockView> rows = blocks.blocks(season, before, most + 1);
        return KeysetPage.answer(
                rows, most, address, "before", last -> last.id().toString());
    }

    @GET
    @Path("kit-blocks/{id}")
    @PermissionsAllowed(Act.LABEL_PRINT)
    public Response read(@PathParam("id") UUID id) {
        return Response.ok(blocks.contents(id))
                .header(HttpHeaders.ETAG, ETags.of(blocks.block(id).version()))
                .build();
    }

    /** The labels of a block as a table, in printing order. */
    @GET
    @Path("kit-blocks/{id}/labels.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.LABEL_PRINT)
    public StreamingOutput labels(@PathParam("id") UUID id) {
        blocks.block(id);
        return out -> {
            try (CsvTable csv = CsvTable.on(out, List.of("kit", "part", "code"))) {
                blocks.labels(id, label -> csv.row(label.kit(), label.part(), label.code()));
            }
        };
    }
}
