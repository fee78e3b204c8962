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
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;

/** Prevalence as JSON, CSV and SVG. */
@Path("/api/v1")
@PermissionsAllowed(Act.REPORT_READ)
public class PrevalenceResource {
    private final PrevalenceService prevalence;
    private final StoredAnswerService answers;
    private final PrevalenceChart chart;

    PrevalenceResource(PrevalenceService prevalence, StoredAnswerService answers, PrevalenceChart chart) {
        this.prevalence = prevalence;
        this.answers = answers;
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
    @Parameter(name = "unit", in = ParameterIn.QUERY)
    @Parameter(name = "interval", in = ParameterIn.QUERY, example = "WILSON")
    @Parameter(name = "confidence", in = ParameterIn.QUERY, example = "0.95")
    @Parameter(name = "cut", in = ParameterIn.QUERY, description = "id of a data cut")
    @APIResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = PrevalenceReport.class)))
    public Response report(@Context UriInfo address, @Context HttpHeaders headers) {
        if (CsvTable.isAsked(headers)) {
            return csv(address);
        }
        ReportQuestion question = prevalence.settle(ReportQuestion.of(address.getQueryParameters()));
        String body = question.cut() == null
                ? answers.canonical(prevalence.report(question))
                : answers.answer(
                        question.cut(),
                        question.canonical(),
                        MediaType.APPLICATION_JSON,
                        () -> answers.canonical(prevalence.report(question)));
        return answer(body, MediaType.APPLICATION_JSON);
    }

    @GET
    @Path("prevalence.csv")
    @Produces("text/csv")
    public Response csv(@Context UriInfo address) {
        ReportQuestion question = prevalence.settle(ReportQuestion.of(address.getQueryParameters()));
        String body = question.cut() == null
                ? PrevalenceCsv.of(prevalence.report(question))
                : answers.answer(
                        question.cut(),
                        question.canonical(),
                        "text/csv",
                        () -> PrevalenceCsv.of(prevalence.report(question)));
        return Response.fromResponse(answer(body, CsvTable.MEDIA_TYPE))
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "attachment; filename=\"prevalence-" + question.season() + ".csv\"")
                .build();
    }

    @GET
    @Path("prevalence.svg")
    @Produces("image/svg+xml")
    public Response svg(@Context UriInfo address) {
        PrevalenceReport report = prevalence.report(ReportQuestion.of(address.getQueryParameters()));
        return answer(chart.svg(report, PrevalenceChart.Use.FILE), "image/svg+xml");
    }

    private static Response answer(String body, String mediaType) {
        return Response.ok(body, mediaType)
                .header(HttpHeaders.CACHE_CONTROL, "private, no-store")
                .header("Digest-SHA-256", StoredAnswerService.digest(body))
                .build();
    }
}
