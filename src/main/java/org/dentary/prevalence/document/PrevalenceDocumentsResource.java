package org.dentary.prevalence.document;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import org.dentary.platform.account.Act;
import org.dentary.prevalence.PrevalenceAnswers;
import org.dentary.prevalence.PrevalenceAnswers.Answer;
import org.dentary.prevalence.PrevalenceResource;
import org.dentary.prevalence.question.ReportQuestion;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** The prevalence report as PDF and XLSX, by its own address or by asking {@code /prevalence} for the media type. */
@Path("/api/v1")
@PermissionsAllowed(Act.REPORT_READ)
public class PrevalenceDocumentsResource {
    static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    static final String PDF = "application/pdf";

    private final PrevalenceAnswers answers;
    private final PrevalencePdf pdf;
    private final PrevalenceWorkbook workbook;

    PrevalenceDocumentsResource(PrevalenceAnswers answers, PrevalencePdf pdf, PrevalenceWorkbook workbook) {
        this.answers = answers;
        this.pdf = pdf;
        this.workbook = workbook;
    }

    @GET
    @Path("prevalence.pdf")
    @Produces(PDF)
    @Operation(
            summary = "The report as a document to print or file",
            description =
                    "Parameters as GET /prevalence. The bytes of two documents differ, their numbers and the digest"
                            + " printed on them do not: it is that of the answer as JSON on the same cut.")
    public Response pdf(@Context UriInfo address) {
        Answer answer = answer(address);
        return sent(answer, pdf.of(answer, address.getBaseUri()), PDF, "pdf");
    }

    @GET
    @Path("prevalence.xlsx")
    @Produces(XLSX)
    @Operation(
            summary = "The report as a workbook",
            description = "Parameters as GET /prevalence. Figures in full precision; a cell not sampled is empty.")
    public Response xlsx(@Context UriInfo address) {
        Answer answer = answer(address);
        return sent(answer, workbook.of(answer, address.getBaseUri()), XLSX, "xlsx");
    }

    @GET
    @Path("prevalence")
    @Produces(PDF)
    @Operation(hidden = true)
    public Response asPdf(@Context UriInfo address) {
        return pdf(address);
    }

    @GET
    @Path("prevalence")
    @Produces(XLSX)
    @Operation(hidden = true)
    public Response asXlsx(@Context UriInfo address) {
        return xlsx(address);
    }

    private Answer answer(UriInfo address) {
        return answers.of(ReportQuestion.of(address.getQueryParameters()));
    }

    private static Response sent(Answer answer, byte[] body, String mediaType, String extension) {
        return PrevalenceResource.superseded(
                        Response.ok(body, mediaType)
                                .header("Digest-SHA-256", answer.digest())
                                .header(
                                        HttpHeaders.CONTENT_DISPOSITION,
                                        "attachment; filename=\"prevalence-"
                                                + answer.question().season() + "." + extension + "\""),
                        answer)
                .build();
    }
}
