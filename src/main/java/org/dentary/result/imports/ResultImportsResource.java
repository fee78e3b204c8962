package org.dentary.result.imports;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;
import org.dentary.result.imports.progress.ImportProgress;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Laboratories' files: preview by PUT, posting by POST. */
@Path("/api/v1/result-imports")
public class ResultImportsResource {
    static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    static final String HL7 = "application/hl7-v2";

    private final ImportService imports;
    private final ImportPreviewService previews;
    private final ImportPostingService postings;

    ResultImportsResource(ImportService imports, ImportPreviewService previews, ImportPostingService postings) {
        this.imports = imports;
        this.previews = previews;
        this.postings = postings;
    }

    /**
     * What is posted.
     *
     * @param leaveOut lines knowingly held back
     * @param otherTests true where the laboratory said that messages whose number was posted before are others; null for false
     */
    public record Posting(
            List<@NotNull(message = "is empty; give the line's number") Integer> leaveOut, Boolean otherTests) {}

    @PUT
    @Path("{id}")
    @Consumes("text/csv")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.RESULT_WRITE)
    @Operation(
            summary = "Preview a laboratory's file",
            description =
                    "By Content-Type: text/csv, XLSX or application/hl7-v2. Nothing is posted; the same file under the"
                            + " same id answers again, under another id its lines are repeats.")
    public Response csv(
            @PathParam("id") UUID id,
            @QueryParam("laboratory") String laboratory,
            @QueryParam("name") String name,
            byte[] file) {
        return previewed(previews.preview(id, laboratory, ImportService.Format.CSV, name, file));
    }

    @PUT
    @Path("{id}")
    @Consumes(XLSX)
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response xlsx(
            @PathParam("id") UUID id,
            @QueryParam("laboratory") String laboratory,
            @QueryParam("name") String name,
            byte[] file) {
        return previewed(previews.preview(id, laboratory, ImportService.Format.XLSX, name, file));
    }

    @PUT
    @Path("{id}")
    @Consumes(HL7)
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response hl7(
            @PathParam("id") UUID id,
            @QueryParam("laboratory") String laboratory,
            @QueryParam("name") String name,
            byte[] file) {
        return previewed(previews.preview(id, laboratory, ImportService.Format.HL7, name, file));
    }

    @GET
    @PermissionsAllowed(Act.RESULT_READ)
    public ItemList<ImportView> list(@QueryParam("limit") @DefaultValue("50") int limit) {
        return new ItemList<>(imports.newest(Math.max(1, Math.min(limit, 500))));
    }

    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.RESULT_READ)
    public Response get(@PathParam("id") UUID id) {
        return answer(Response.ok(), imports.view(id));
    }

    /** How far it is, and when it is done or ended without being done, that. */
    @GET
    @Path("{id}/progress")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.RESULT_READ)
    @Operation(
            summary = "How far a large import is",
            description =
                    "While a preview or a posting runs, from any other connection. STOPPED: the service ended in the"
                            + " middle, nothing of it is stored, ask for it again.")
    public Response progress(@PathParam("id") UUID id) {
        return Reply.ok(imports.progress(id).orElseGet(() -> {
            ImportView there = imports.view(id);
            return new ImportProgress(
                    there.state().equals("POSTED") ? "POSTING" : "PREVIEW",
                    "DONE",
                    null,
                    there.rows(),
                    there.rows(),
                    100,
                    null,
                    there.fileName(),
                    there.uploadedAt());
        }));
    }

    @GET
    @Path("{id}/problems.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.RESULT_READ)
    public Response problems(@PathParam("id") UUID id) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, List.of("line", "field", "rule", "message"))) {
            imports.problems(id).forEach(p -> csv.row(p.line(), p.field(), p.rule(), p.message()));
        }
        return Reply.file(out.toByteArray(), CsvTable.MEDIA_TYPE, "problems.csv");
    }

    @POST
    @Path("{id}/posting")
    @Consumes(MediaType.WILDCARD)
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response post(@PathParam("id") UUID id, @Valid Posting posting) {
        List<Integer> leaveOut = posting == null || posting.leaveOut() == null ? List.of() : posting.leaveOut();
        return answer(
                Response.ok(),
                postings.post(id, leaveOut, posting != null && Boolean.TRUE.equals(posting.otherTests())));
    }

    private static Response previewed(ImportPreviewService.Done done) {
        return answer(Response.status(done.fresh() ? 201 : 200), done.view());
    }

    private static Response answer(Response.ResponseBuilder answer, ImportView view) {
        return answer.entity(view).build();
    }
}
