package org.dentary.prevalence.ageing;

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
import org.dentary.platform.table.ItemList;
import org.dentary.prevalence.ageing.AgeingAnswers.Answer;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.chart.PrevalenceChart.Use;
import org.dentary.prevalence.cut.Superseded;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;

/** The what-if of ageing error as JSON, CSV and picture, and the matrices that it can take. */
@Path("/api/v1")
public class AgeingResource {
    private final AgeingAnswers answers;
    private final ErrorMatrixQueries matrices;
    private final AgeingPdf pdf;

    AgeingResource(AgeingAnswers answers, ErrorMatrixQueries matrices, AgeingPdf pdf) {
        this.answers = answers;
        this.matrices = matrices;
        this.pdf = pdf;
    }

    @GET
    @Path("ageing-error")
    @Produces({MediaType.APPLICATION_JSON, "text/csv"})
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(
            summary = "What-if: how ageing error would bend the age pattern",
            description =
                    "Counted and detected by age class and sex as read, beside what they would be if jaws were misread as a matrix"
                            + " says; and what readers with that error would have told of the classes as read. Takes the"
                            + " parameters of /api/v1/prevalence except by, ageClass, interval and confidence: a what-if has no"
                            + " interval.")
    @Parameter(name = "season", in = ParameterIn.QUERY, required = true, example = "SY2026")
    @Parameter(name = "disease", in = ParameterIn.QUERY)
    @Parameter(name = "species", in = ParameterIn.QUERY)
    @Parameter(name = "unit", in = ParameterIn.QUERY)
    @Parameter(name = "sex", in = ParameterIn.QUERY, example = "MALE")
    @Parameter(name = "cut", in = ParameterIn.QUERY, description = "id of a data cut")
    @Parameter(
            name = "matrix",
            in = ParameterIn.QUERY,
            required = true,
            description =
                    "code of an ageing-error matrix, or KNOWN_AGE for the one counted from jaws of known age here",
            example = "PLAN_2026")
    @APIResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = AgeingWhatIf.class)))
    public Response whatIf(@Context UriInfo address, @Context HttpHeaders headers) {
        if (CsvTable.isAsked(headers)) {
            return csv(address);
        }
        Answer answer = answer(address);
        return told(answer, Response.ok(answer.json(), MediaType.APPLICATION_JSON), answer.json());
    }

    @GET
    @Path("ageing-error.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(summary = "The what-if of ageing error as CSV, a line for each sex and age class")
    public Response csv(@Context UriInfo address) {
        Answer answer = answer(address);
        String body = AgeingCsv.of(answer.whatIf());
        return told(
                answer,
                Response.ok(body, CsvTable.MEDIA_TYPE)
                        .header(
                                HttpHeaders.CONTENT_DISPOSITION,
                                "attachment; filename=\"ageing-error-what-if-"
                                        + answer.whatIf().season() + ".csv\""),
                body);
    }

    @GET
    @Path("ageing-error.svg")
    @Produces("image/svg+xml")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(summary = "The picture of the what-if, black on white, as SVG")
    public Response svg(@Context UriInfo address) {
        Answer answer = answer(address);
        String body = AgeingPicture.svg(answer.whatIf(), Use.FILE);
        return told(answer, Response.ok(body, "image/svg+xml"), body);
    }

    @GET
    @Path("ageing-error.png")
    @Produces("image/png")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(summary = "The picture of the what-if, black on white, as PNG at twice the size of the screen's")
    public Response png(@Context UriInfo address) {
        Answer answer = answer(address);
        return superseded(answer, Response.ok(AgeingPicture.png(answer.whatIf()), "image/png"))
                .build();
    }

    @GET
    @Path("ageing-error.pdf")
    @Produces("application/pdf")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(
            summary = "The what-if of ageing error as a document to print or file",
            description =
                    "With matrix, warnings, sentences, tables, picture, what has to hold, notes, cautions, the address that asks"
                            + " the same again and the digest of its answer. Every page says that it is a what-if.")
    public Response pdf(@Context UriInfo address) {
        Answer answer = answer(address);
        return superseded(answer, Response.ok(pdf.of(answer, address.getBaseUri()), "application/pdf"))
                .header("Digest-SHA-256", answer.digest())
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "attachment; filename=\"ageing-error-what-if-"
                                + answer.whatIf().season() + ".pdf\"")
                .build();
    }

    @GET
    @Path("ageing-error-matrices")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.READ_COMMON)
    @Operation(summary = "Ageing-error matrices that are set up, each with its kind and source")
    public ItemList<ErrorMatrix> matrices() {
        return new ItemList<>(matrices.all());
    }

    private Answer answer(UriInfo address) {
        return answers.of(address.getQueryParameters());
    }

    private static Response told(Answer answer, Response.ResponseBuilder response, String body) {
        return superseded(answer, response)
                .header("Digest-SHA-256", StoredAnswerService.digest(body))
                .build();
    }

    private static Response.ResponseBuilder superseded(Answer answer, Response.ResponseBuilder response) {
        return Superseded.on(response, answer.superseded());
    }
}
