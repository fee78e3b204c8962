package org.dentary.prevalence.detection;

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
import org.dentary.prevalence.cut.Superseded;
import org.dentary.prevalence.question.ReportQuestion;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;

/** Chance of detection as JSON and CSV. */
@Path("/api/v1")
@PermissionsAllowed(Act.REPORT_READ)
public class ChanceOfDetectionResource {
    private final ChanceService chances;
    private final ChanceAnswers answers;

    ChanceOfDetectionResource(ChanceService chances, ChanceAnswers answers) {
        this.chances = chances;
        this.answers = answers;
    }

    @GET
    @Path("chance-of-detection")
    @Produces({MediaType.APPLICATION_JSON, "text/csv"})
    @Operation(
            summary = "What the sampling so far can rule out, by management unit",
            description =
                    "Counts as the prevalence report does, by the same scope; design prevalence, target, sensitivity,"
                            + " herd size, prior, introduction risk and risk weights are the plan's. On a cut the answer is the"
                            + " same byte for byte for ever.")
    @Parameter(name = "season", in = ParameterIn.QUERY, required = true, example = "2026")
    @Parameter(name = "disease", in = ParameterIn.QUERY, description = "the plan's first if left out")
    @Parameter(name = "species", in = ParameterIn.QUERY, description = "the plan's first if left out")
    @Parameter(name = "unit", in = ParameterIn.QUERY, description = "one or more units; all if left out")
    @Parameter(
            name = "confidence",
            in = ParameterIn.QUERY,
            description = "one-sided level of the upper limits",
            example = "0.95")
    @Parameter(name = "cut", in = ParameterIn.QUERY, description = "id of a data cut")
    @APIResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = ChanceOfDetection.class)))
    public Response report(@Context UriInfo address, @Context HttpHeaders headers) {
        if (CsvTable.isAsked(headers)) {
            return csv(address);
        }
        ReportQuestion question = chances.question(address.getQueryParameters());
        ChanceAnswers.Answer told = answers.of(question);
        return answer(told.json(), MediaType.APPLICATION_JSON, told);
    }

    @GET
    @Path("chance-of-detection.csv")
    @Produces("text/csv")
    @Operation(summary = "Chance of detection as a CSV file, one line a unit")
    public Response csv(@Context UriInfo address) {
        ReportQuestion question = chances.question(address.getQueryParameters());
        ChanceAnswers.Answer told = answers.of(question);
        return file(ChanceCsv.units(told.report()), "chance-of-detection", question, told);
    }

    @GET
    @Path("chance-of-detection-take-next.csv")
    @Produces("text/csv")
    @Operation(summary = "What to take next as a CSV file, one line a choice")
    public Response takeNext(@Context UriInfo address) {
        ReportQuestion question = chances.question(address.getQueryParameters());
        ChanceAnswers.Answer told = answers.of(question);
        return file(ChanceCsv.takeNext(told.report().season(), told.report().takeNext()), "take-next", question, told);
    }

    private static Response file(String body, String name, ReportQuestion question, ChanceAnswers.Answer told) {
        return Response.fromResponse(answer(body, CsvTable.MEDIA_TYPE, told))
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "attachment; filename=\"" + name + "-" + question.season() + ".csv\"")
                .build();
    }

    private static Response answer(String body, String mediaType, ChanceAnswers.Answer told) {
        return Superseded.on(Response.ok(body, mediaType), told.superseded())
                .header("Digest-SHA-256", StoredAnswerService.digest(body))
                .build();
    }
}
