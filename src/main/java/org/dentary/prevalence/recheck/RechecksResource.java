package org.dentary.prevalence.recheck;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Checks of stored answers. */
@Path("/api/v1/data-cuts")
public class RechecksResource {
    private final RecheckService checks;

    RechecksResource(RecheckService checks) {
        this.checks = checks;
    }

    @PUT
    @Path("rechecks/{id}")
    @PermissionsAllowed(Act.DATA_CUT)
    @Operation(
            summary = "Compute every stored answer again",
            description =
                    "No body. The answers stay as they were sent; figures names each number that would differ now.")
    public Response put(@PathParam("id") UUID id) {
        RecheckService.Made made = checks.put(id);
        return Response.status(made.fresh() ? 201 : 200)
                .header(HttpHeaders.ETAG, org.dentary.platform.request.ETags.of(0))
                .entity(made.check())
                .build();
    }

    @GET
    @Path("rechecks")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(summary = "Checks of stored answers, newest first")
    public ItemList<RecheckView> list() {
        return new ItemList<>(checks.all());
    }

    @GET
    @Path("rechecks/{id}")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(summary = "One check with every number that moved")
    public RecheckView one(@PathParam("id") UUID id) {
        return checks.require(id);
    }

    @GET
    @Path("rechecks/{id}.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(summary = "The numbers that moved, as CSV")
    public Response csv(@PathParam("id") UUID id) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, List.of("cut", "question", "mediaType", "figure", "stored", "computed"))) {
            checks.require(id)
                    .figures()
                    .forEach(f -> csv.row(f.cut(), f.question(), f.mediaType(), f.figure(), f.stored(), f.computed()));
        }
        return Reply.file(out.toByteArray(), CsvTable.MEDIA_TYPE, "moved.csv");
    }
}
