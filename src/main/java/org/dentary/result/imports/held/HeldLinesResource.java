package org.dentary.result.imports.held;

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
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Lines left out when a laboratory's file was posted. */
@Path("/api/v1/held-lines")
@Produces(MediaType.APPLICATION_JSON)
public class HeldLinesResource {
    private static final int MOST = 1_000;

    private final HeldLineService held;

    HeldLinesResource(HeldLineService held) {
        this.held = held;
    }

    /**
     * The newest of the lines.
     *
     * @param count of all that were asked for
     */
    public record HeldLines(long count, List<HeldLine> items) {}

    @GET
    @PermissionsAllowed(Act.RESULT_READ)
    @Operation(
            summary = "Lines left out that wait, of the newest file first",
            description =
                    "A line waits until the laboratory reports the same tissue by the same method and stage, or somebody"
                            + " says what came of it. `all=true` adds those. At most 1,000; the CSV has every one.")
    public Response list(@QueryParam("all") boolean all, @QueryParam("limit") @DefaultValue("200") int limit) {
        return Reply.ok(new HeldLines(held.count(all), held.lines(all, Math.max(1, Math.min(limit, MOST)))));
    }

    @GET
    @Path("table.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.RESULT_READ)
    @Operation(summary = "Lines left out as CSV")
    public Response table(@QueryParam("all") boolean all) {
        StreamingOutput body = out -> held.write(all, out);
        return Reply.file(body, CsvTable.MEDIA_TYPE, "lines-left-out.csv");
    }

    @PUT
    @Path("{id}/{line}/settlement")
    @PermissionsAllowed(Act.RESULT_WRITE)
    @Operation(
            summary = "Say what came of a line left out",
            description = "`id` is the import's. It leaves the work list and stays on record with who said it.")
    public Response settle(@PathParam("id") UUID id, @PathParam("line") int line, @NotNull @Valid SettleLine command) {
        HeldLineService.Settled settled = held.settle(id, line, command);
        return Reply.versioned(settled.isNew() ? 201 : 200, settled.line(), 0);
    }
}
