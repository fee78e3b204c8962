package org.dentary.prevalence;

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
import org.dentary.prevalence.question.ReportQuestion;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;

/** Prevalence as JSON and CSV, and its picture. */
@Path("/api/v1")
@PermissionsAllowed(Act.REPORT_READ)
public class PrevalenceResource {
    private final PrevalenceAnswers answers;
    private final StoredAnswerService stored;
    private final PrevalenceChart chart;

    PrevalenceResource(PrevalenceAnswers answers, StoredAnswerService stored, PrevalenceChart chart) {
        this.answers = answers;
        this.stored = stored;
        this.chart = chart;
    }

    @GET
    @Path("prevalence")
    @Produces({MediaType.APPLICATION_JSON, "text/csv"})
    @Operation(
            summary = "Prevalence by age class, sex and place",
            description =
                    "Any column of the line list filters: managementUnit (or unit), region, station, sex, ageClass ..."
                            + " On a cut the answer is the same byte for byte for ever.")
    @Parameter(name = "season", in = ParameterIn.QUERY, required = true, example = "2026")
    @Parameter(name = "disease", in = ParameterIn.QUERY, description = "the plan's first if left out")
    @Parameter(name = "species", in = ParameterIn.QUERY, description = "the plan's first if left out")
    @Parameter(name = "by", in = ParameterIn.QUERY, example = "ageClass,sex")
    @Parameter(
            name = "columns",
            in = ParameterIn.QUERY,
            description =
                    "a dimension whose values stand side by side on page, paper and in the workbook; rows and columns are then"
                            + " added up in every form",
            example = "sex")
    @Parameter(name = "unit", in = ParameterIn.QUERY)
    @Parameter(name = "interval", in = ParameterIn.QUERY, example = "WILSON")
    @Parameter(name = "confidence", in = ParameterIn.QUERY, example = "0.95")
    @Parameter(name = "cut", in = ParameterIn.QUERY, description = "id of a data cut")
    @Parameter(
            name = "with",
            in = ParameterIn.QUERY,
            description =
                    "other seasons beside it, or on a cut ids of cuts of them; season has to be among by and columns",
            example = "SY2025")
    @APIResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = PrevalenceReport.class)))
    public Response report(@Context UriInfo address, @Context HttpHeaders headers) {
        if (CsvTable.isAsked(headers)) {
            return csv(address);
        }
        return told(answers.of(ReportQuestion.of(address.getQueryParameters())));
    }

    @GET
    @Path("prevalence.csv")
    @Produces("text/csv")
    public Response csv(@Context UriInfo address) {
        PrevalenceAnswers.Answer told = answers.of(ReportQuestion.of(address.getQueryParameters()));
        ReportQuestion question = told.question();
        String body = question.cut() == null
                ? PrevalenceCsv.of(told.report())
                : stored.answer(
                        question.cut(), question.canonical(), "text/csv", () -> PrevalenceCsv.of(told.report()));
        return superseded(answer(body, CsvTable.MEDIA_TYPE), told)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "attachment; filename=\"prevalence-" + question.season() + ".csv\"")
                .build();
    }

    @GET
    @Path("prevalence.svg")
    @Produces("image/svg+xml")
    @Operation(summary = "The picture of a report, black on white, as SVG")
    public Response svg(@Context UriInfo address) {
        PrevalenceAnswers.Answer told = answers.of(ReportQuestion.of(address.getQueryParameters()));
        return superseded(answer(chart.svg(told.report(), PrevalenceChart.Use.FILE), "image/svg+xml"), told)
                .build();
    }

    @GET
    @Path("prevalence.png")
    @Produces("image/png")
    @Operation(summary = "The picture of a report, black on white, as PNG at twice the size of the screen's")
    public Response png(@Context UriInfo address) {
        PrevalenceAnswers.Answer told = answers.of(ReportQuestion.of(address.getQueryParameters()));
        return superseded(Response.ok(chart.png(told.report()), "image/png"), told)
                .build();
    }

    private static Response told(PrevalenceAnswers.Answer told) {
        return superseded(answer(told.json(), MediaType.APPLICATION_JSON), told).build();
    }

    private static Response.ResponseBuilder answer(String body, String mediaType) {
        return Response.ok(body, mediaType).header("Digest-SHA-256", StoredAnswerService.digest(body));
    }

    /** The stored bytes stay as they are, so that a cut is superseded is told beside them (RFC 8187 form). */
    public static Response.ResponseBuilder superseded(
            Response.ResponseBuilder response, PrevalenceAnswers.Answer told) {
        return Superseded.on(response, told.superseded());
    }
}
