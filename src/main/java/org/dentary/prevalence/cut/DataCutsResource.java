package org.dentary.prevalence.cut;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.ETags;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Data cuts and what changed between two. */
@Path("/api/v1/data-cuts")
public class DataCutsResource {
    private final DataCutService cuts;

    DataCutsResource(DataCutService cuts) {
        this.cuts = cuts;
    }

    @PUT
    @Path("{id}")
    @PermissionsAllowed(Act.DATA_CUT)
    public Response put(
            @PathParam("id") UUID id,
            @NotNull @Valid MakeDataCut command,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch) {
        DataCutService.Made made = cuts.put(id, command, ifMatch);
        return Response.status(made.fresh() ? 201 : 200)
                .header(HttpHeaders.ETAG, ETags.of(made.cut().version()))
                .entity(made.cut())
                .build();
    }

    @GET
    @PermissionsAllowed(Act.REPORT_READ)
    public ItemList<DataCutView> list(@QueryParam("season") String season) {
        return new ItemList<>(cuts.all(season));
    }

    @GET
    @Path("{from}/changes")
    @PermissionsAllowed(Act.REPORT_READ)
    public DataCutChanges changes(@PathParam("from") UUID from, @QueryParam("to") UUID to) {
        if (to == null) {
            throw InvalidInput.field("to", "REQUIRED", "to is missing: the id of the later cut");
        }
        return cuts.changes(from, to);
    }

    @GET
    @Path("{from}/changes.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(summary = "What changed between two cuts, one line for each field of each animal")
    public Response changesCsv(@PathParam("from") UUID from, @QueryParam("to") UUID to) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv =
                CsvTable.on(out, List.of("kit", "disease", "change", "cause", "field", "before", "after"))) {
            changes(from, to)
                    .changes()
                    .forEach(change -> change.details()
                            .forEach(detail -> csv.row(
                                    change.kit(),
                                    change.disease(),
                                    change.kind(),
                                    change.cause(),
                                    detail.field(),
                                    detail.before(),
                                    detail.after())));
        }
        return Reply.file(out.toByteArray(), CsvTable.MEDIA_TYPE, "changes.csv");
    }
}
