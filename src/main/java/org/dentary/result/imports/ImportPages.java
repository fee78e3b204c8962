package org.dentary.result.imports;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.result.imports.file.RowProblem;
import org.dentary.result.imports.progress.ImportProgress;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** One laboratory's file: send it, look it through, post it. */
@Path("/results")
@Produces(MediaType.TEXT_HTML)
public class ImportPages {
    private static final int ASK_AGAIN_SECONDS = 2;
    static final int ROWS_SHOWN = 300;

    private final ResultsPage results;
    private final ImportService imports;
    private final ImportPreviewService previews;
    private final ImportPostingService postings;
    private final ImportsInBackground background;
    private final PlanService plan;

    ImportPages(
            ResultsPage results,
            ImportService imports,
            ImportPreviewService previews,
            ImportPostingService postings,
            ImportsInBackground background,
            PlanService plan) {
        this.results = results;
        this.imports = imports;
        this.previews = previews;
        this.postings = postings;
        this.background = background;
        this.plan = plan;
    }

    @CheckedTemplate(basePath = "result/imports")
    static class Templates {
        static native TemplateInstance progress(UUID id, ImportProgress progress);

        static native TemplateInstance preview(
                ImportView file,
                List<ImportQueries.PreviewRow> rows,
                List<RowProblem> ofTheFile,
                Set<Integer> left,
                int faulty,
                Faults faults);
    }

    @POST
    @Path("imports")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response send(@RestForm String laboratory, @RestForm("file") FileUpload file) {
        try {
            UUID id = UUID.randomUUID();
            byte[] bytes = bytes(file);
            String name = file == null ? null : file.fileName();
            if (bytes.length >= ImportService.LARGE_BYTES) {
                requireLaboratory(laboratory);
                background.preview(id, laboratory, format(bytes), name, bytes);
            } else {
                previews.preview(id, laboratory, format(bytes), name, bytes);
            }
            return Response.seeOther(URI.create("/results/imports/" + id)).build();
        } catch (DomainException refusal) {
            Faults faults = refusal.errors().isEmpty()
                    ? new Faults(List.of(new FieldProblem("file", refusal.code(), refusal.getMessage())))
                    : Faults.of(refusal);
            return results.show(refusal.status(), laboratory, faults);
        }
    }

    @GET
    @Path("imports/{id}")
    @PermissionsAllowed(Act.RESULT_READ)
    public Response preview(@PathParam("id") UUID id) {
        Optional<ImportProgress> known = imports.progress(id);
        if (known.isEmpty()) {
            return preview(200, id, Set.of(), Faults.NONE);
        }
        ImportProgress progress = known.get();
        if (progress.isRunning()) {
            Response page = Reply.page(200, Templates.progress(id, progress));
            page.getHeaders().putSingle("Refresh", ASK_AGAIN_SECONDS);
            return page;
        }
        boolean stopped = progress.state().equals("STOPPED");
        String why = stopped
                ? "The service ended in the middle of it, and nothing was "
                        + (imports.isRecorded(id) ? "posted. Post it again." : "stored. Send the file again.")
                : progress.refusal();
        Faults faults =
                new Faults(List.of(new FieldProblem(imports.isRecorded(id) ? "" : "file", progress.state(), why)));
        return imports.isRecorded(id) ? preview(409, id, Set.of(), faults) : results.show(422, null, faults);
    }

    @GET
    @Path("imports/{id}/problems.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.RESULT_READ)
    public Response problems(@PathParam("id") UUID id) {
        return Reply.csv(
                "problems.csv",
                List.of("line", "field", "rule", "message"),
                imports.problems(id).stream()
                        .map(p -> new Object[] {p.line(), p.field(), p.rule(), p.message()})
                        .toList());
    }

    /** Posts the file; the lines ticked, or every line with a problem, are held back. */
    @POST
    @Path("imports/{id}/posting")
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response post(
            @PathParam("id") UUID id,
            @RestForm List<String> leaveOut,
            @RestForm String leaveOutFaulty,
            @RestForm String otherTests) {
        Set<Integer> left = new TreeSet<>();
        try {
            for (String line : leaveOut == null ? List.<String>of() : leaveOut) {
                left.add(line(line));
            }
            if (leaveOutFaulty != null) {
                left.addAll(imports.faultyLines(id));
            }
            if (imports.isLarge(id)) {
                background.post(id, new ArrayList<>(left), otherTests != null);
            } else {
                postings.post(id, new ArrayList<>(left), otherTests != null);
            }
            return Response.seeOther(URI.create("/results/imports/" + id)).build();
        } catch (DomainException refusal) {
            return preview(
                    refusal.status(),
                    id,
                    left,
                    new Faults(List.of(new FieldProblem("", refusal.code(), refusal.getMessage()))));
        }
    }

    private static int line(String typed) {
        try {
            return Integer.parseInt(typed);
        } catch (NumberFormatException e) {
            throw InvalidInput.field("leaveOut", "NOT_A_NUMBER", "'" + typed + "' is not a line of the file");
        }
    }

    private void requireLaboratory(String laboratory) {
        if (laboratory == null || laboratory.isBlank()) {
            throw InvalidInput.field("laboratory", "REQUIRED", "Choose whose file it is");
        }
        plan.laboratory(laboratory);
    }

    private Response preview(int status, UUID id, Set<Integer> left, Faults faults) {
        ImportView file = imports.view(id);
        return Reply.page(
                status,
                Templates.preview(
                        file,
                        imports.rows(id, ROWS_SHOWN),
                        file.problems().stream().filter(p -> p.line() == 0).toList(),
                        left,
                        imports.faultyLines(id).size(),
                        faults));
    }

    /** By how the file begins, as browsers seldom know: a packed spreadsheet, a message, else a table as text. */
    static ImportService.Format format(byte[] file) {
        String head = new String(file, 0, Math.min(file.length, 8), StandardCharsets.ISO_8859_1)
                .strip()
                .toUpperCase(Locale.ROOT);
        if (head.startsWith("PK")) {
            return ImportService.Format.XLSX;
        }
        return head.startsWith("MSH") ? ImportService.Format.HL7 : ImportService.Format.CSV;
    }

    private static byte[] bytes(FileUpload file) {
        try {
            return file == null ? new byte[0] : Files.readAllBytes(file.uploadedFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
