package org.dentary.submission.manifest;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.dentary.plan.LaboratoryView;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.platform.table.CsvTable;
import org.dentary.submission.Receiving;
import org.dentary.submission.SubmissionService;
import org.dentary.submission.SubmissionView;
import org.dentary.submission.packing.PackedView;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** The papers of a submission. No hunter and no exact place is ever on them. */
@ApplicationScoped
public class ManifestService {
    static final List<String> COLUMNS = List.of(
            "submission",
            "box",
            "specimen_code",
            "tissue",
            "side",
            "preservation",
            "collected_on",
            "species",
            "age_class",
            "sex",
            "packed_at",
            "override_reason",
            "identity_exception");

    private final SubmissionService submissions;
    private final PlanService plan;
    private final ManifestPdf pdf;
    private final PlanClock planClock;
    private final Clock clock;

    ManifestService(
            SubmissionService submissions, PlanService plan, ManifestPdf pdf, PlanClock planClock, Clock clock) {
        this.submissions = submissions;
        this.plan = plan;
        this.pdf = pdf;
        this.planClock = planClock;
        this.clock = clock;
    }

    /** The list as CSV, one line a specimen in the order packed. */
    byte[] csv(UUID id) {
        SubmissionView submission = submissions.view(id);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, COLUMNS)) {
            submission
                    .specimens()
                    .forEach(piece -> csv.row(cells(submission, piece).toArray()));
        }
        return out.toByteArray();
    }

    /** The list as a workbook of one sheet, every cell text so that no code is turned into a number. */
    byte[] xlsx(UUID id) {
        SubmissionView submission = submissions.view(id);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(out, "Dentary", "1.0")) {
            Worksheet sheet = workbook.newWorksheet("Manifest");
            for (int column = 0; column < COLUMNS.size(); column++) {
                sheet.value(0, column, COLUMNS.get(column));
            }
            int line = 1;
            for (PackedView piece : submission.specimens()) {
                List<Object> cells = cells(submission, piece);
                for (int column = 0; column < cells.size(); column++) {
                    sheet.value(
                            line,
                            column,
                            cells.get(column) == null ? "" : cells.get(column).toString());
                }
                line++;
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** The laboratory's copy and the copy for the box, to print. */
    byte[] pdf(UUID id) {
        SubmissionView submission = submissions.view(id);
        LaboratoryView laboratory = plan.laboratory(submission.laboratory());
        ZoneId zone = planClock.zone();
        LocalDate packed = LocalDate.ofInstant(
                submission.dispatchedAt() == null ? clock.instant() : submission.dispatchedAt(), zone);
        return pdf.of(
                submission,
                laboratory.name(),
                Receiving.of(plan.laboratoryProfile(submission.laboratory(), packed), packed)
                        .facts(),
                zone);
    }

    private static List<Object> cells(SubmissionView submission, PackedView piece) {
        List<Object> cells = new ArrayList<>();
        cells.add(submission.number());
        cells.add(piece.box());
        cells.add(piece.code());
        cells.add(piece.tissue());
        cells.add(piece.side());
        cells.add(piece.preservation());
        cells.add(piece.collectedOn());
        cells.add(piece.species());
        cells.add(piece.ageClass());
        cells.add(piece.sex());
        cells.add(piece.packedAt());
        cells.add(piece.overrideReason());
        cells.add(piece.identityException() ? "YES" : "");
        return cells;
    }
}
