package org.dentary.prevalence.truth;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import org.dentary.platform.account.Act;
import org.dentary.platform.table.CsvTable;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.chart.PrevalenceChart;
import org.dentary.prevalence.cut.Superseded;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;

/** True prevalence as JSON, CSV, workbook, document and picture. */
@Path("/api/v1")
public class TruthResource {
    private static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    private final TruthAnswers answers;
    private final TruthPicture picture;
    private final TruthPdf pdf;

    TruthResource(TruthAnswers answers, TruthPicture picture, TruthPdf pdf) {
        this.answers = answers;
        this.picture = picture;
        this.pdf = pdf;
    }

    @GET
    @Path("true-prevalence")
    @Produces({MediaType.APPLICATION_JSON, "text/csv"})
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(
            summary = "True prevalence beside the apparent one",
            description =
                    "On the animals that /api/v1/prevalence counts, with its parameters, and a set of test performance of animal"
                            + " level: Rogan and Gladen's estimate with Reiczigel's limits where sensitivity and specificity are"
                            + " stated, with Lang and Reiczigel's where a study's counts are given. An estimate outside 0 to 1 is"
                            + " cut, said to be and kept as raw. A set relative to another test is refused"
                            + " (RELATIVE_SENSITIVITY). On a cut the answer is the same byte for byte for ever.")
    @Parameter(name = "season", in = ParameterIn.QUERY, required = true, example = "SY2026")
    @Parameter(
            name = "performance",
            in = ParameterIn.QUERY,
            required = true,
            description = "code of a set; /api/v1/test-performance lists them",
            example = "TOLVANE_2026")
    @Parameter(name = "disease", in = ParameterIn.QUERY, description = "the plan's first if left out")
    @Parameter(name = "species", in = ParameterIn.QUERY, description = "the plan's first if left out")
    @Parameter(name = "by", in = ParameterIn.QUERY, example = "ageClass,sex")
    @Parameter(
            name = "columns",
            in = ParameterIn.QUERY,
            description = "as for /api/v1/prevalence; here it is told in rows")
    @Parameter(name = "unit", in = ParameterIn.QUERY)
    @Parameter(
            name = "interval",
            in = ParameterIn.QUERY,
            description = "of the apparent prevalence",
            example = "WILSON")
    @Parameter(name = "confidence", in = ParameterIn.QUERY, example = "0.95")
    @Parameter(name = "cut", in = ParameterIn.QUERY, description = "id of a data cut")
    @APIResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = TruthReport.class)))
    public Response report(@Context UriInfo address, @Context HttpHeaders headers) {
        if (CsvTable.isAsked(headers)) {
            return csv(address);
        }
        TruthAnswers.Answer answer = of(address);
        return told(answer, answer.json(), MediaType.APPLICATION_JSON).build();
    }

    @GET
    @Path("true-prevalence.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(summary = "True prevalence as a CSV file, one line a cell")
    public Response csv(@Context UriInfo address) {
        TruthAnswers.Answer answer = of(address);
        return told(answer, TruthCsv.of(answer.report()), CsvTable.MEDIA_TYPE)
                .header(HttpHeaders.CONTENT_DISPOSITION, file(answer, "csv"))
                .build();
    }

    @GET
    @Path("true-prevalence.svg")
    @Produces("image/svg+xml")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(summary = "Apparent and true prevalence with their intervals, black on white, as SVG")
    public Response svg(@Context UriInfo address) {
        TruthAnswers.Answer answer = of(address);
        return told(answer, picture.svg(answer.report(), PrevalenceChart.Use.FILE), "image/svg+xml")
                .build();
    }

    @GET
    @Path("true-prevalence.png")
    @Produces("image/png")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(summary = "The same picture as PNG at twice the size of the screen's")
    public Response png(@Context UriInfo address) {
        TruthAnswers.Answer answer = of(address);
        return superseded(Response.ok(picture.png(answer.report()), "image/png"), answer)
                .build();
    }

    @GET
    @Path("true-prevalence.xlsx")
    @Produces(XLSX)
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(
            summary = "True prevalence as a workbook",
            description =
                    "Figures in full precision; a cell not sampled is empty. Set, warnings, notes, methods and cautions"
                            + " on a sheet of their own.")
    public Response xlsx(@Context UriInfo address) {
        TruthAnswers.Answer answer = of(address);
        String digest = StoredAnswerService.digest(answer.json());
        return document(answer, digest, TruthWorkbook.of(answer.report(), answer.superseded(), digest), XLSX, "xlsx");
    }

    @GET
    @Path("true-prevalence.pdf")
    @Produces("application/pdf")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(
            summary = "True prevalence as a document to print or file",
            description =
                    "With set, warnings, tables, picture, notes, methods, cautions, the address that asks the same again and"
                            + " the digest of its answer.")
    public Response pdf(@Context UriInfo address) {
        TruthAnswers.Answer answer = of(address);
        String digest = StoredAnswerService.digest(answer.json());
        return document(answer, digest, pdf.of(answer, digest, address.getBaseUri()), "application/pdf", "pdf");
    }

    private static Response document(
            TruthAnswers.Answer answer, String digest, byte[] body, String mediaType, String ending) {
        return superseded(
                        Response.ok(body, mediaType)
                                .header("Digest-SHA-256", digest)
                                .header(HttpHeaders.CONTENT_DISPOSITION, file(answer, ending)),
                        answer)
                .build();
    }

    private static String file(TruthAnswers.Answer answer, String ending) {
        return "attachment; filename=\"true-prevalence-" + answer.report().season() + "." + ending + "\"";
    }

    private TruthAnswers.Answer of(UriInfo address) {
        return answers.of(TruthQuestion.of(address.getQueryParameters()));
    }

    private static Response.ResponseBuilder told(TruthAnswers.Answer answer, String body, String mediaType) {
        return superseded(
                Response.ok(body, mediaType).header("Digest-SHA-256", StoredAnswerService.digest(body)), answer);
    }

    private static Response.ResponseBuilder superseded(Response.ResponseBuilder response, TruthAnswers.Answer answer) {
        return Superseded.on(response, answer.superseded());
    }
}
