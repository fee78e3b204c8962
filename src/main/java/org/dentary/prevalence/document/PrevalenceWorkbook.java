package org.dentary.prevalence.document;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import org.dentary.prevalence.PrevalenceAnswers.Answer;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.PrevalenceReport;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/**
 * A report as a workbook: the cells with figures in full precision, from taken to counted, unknown ages, and how to read it.
 * Codes stay codes, so that a workbook joins the line list; a cell that is not sampled is empty, never 0.
 */
@ApplicationScoped
class PrevalenceWorkbook {
    private static final List<String> FIGURES =
            List.of("counted", "detected", "prevalence", "lower", "upper", "pending", "pendingShare", "flags");
    private static final String SHARE = "0.0%";

    private final ReportFacts facts;

    PrevalenceWorkbook(ReportFacts facts) {
        this.facts = facts;
    }

    byte[] of(Answer answer, URI base) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(out, "Dentary", "1.0")) {
            cells(workbook.newWorksheet("Prevalence"), answer.report());
            if (answer.report().columns() != null) {
                CrossSheet.write(workbook.newWorksheet("Rows and columns"), answer.report());
            }
            steps(workbook.newWorksheet("From taken to counted"), answer.report());
            unknownAge(workbook.newWorksheet("Unknown age"), answer.report());
            reading(workbook.newWorksheet("How to read it"), answer, base);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        return out.toByteArray();
    }

    private static void cells(Worksheet sheet, PrevalenceReport report) {
        List<String> columns = new ArrayList<>(report.by());
        columns.addAll(FIGURES);
        head(sheet, columns);
        int line = 1;
        for (PrevalenceCell cell : report.cells()) {
            int column = 0;
            for (String value : cell.group().values()) {
                sheet.value(line, column++, value);
            }
            figures(sheet, line++, column, cell);
        }
        for (int column = 0; column < report.by().size(); column++) {
            sheet.value(line, column, "ALL");
        }
        figures(sheet, line, report.by().size(), report.total());
        sheet.range(line, 0, line, columns.size() - 1).style().bold().set();
    }

    private static void figures(Worksheet sheet, int line, int from, PrevalenceCell cell) {
        sheet.value(line, from, cell.counted());
        sheet.value(line, from + 1, cell.detected());
        share(sheet, line, from + 2, cell.prevalence());
        share(sheet, line, from + 3, cell.lower());
        share(sheet, line, from + 4, cell.upper());
        sheet.value(line, from + 5, cell.pending());
        share(sheet, line, from + 6, cell.pendingShare());
        sheet.value(line, from + 7, String.join(" ", cell.flags()));
    }

    static void share(Worksheet sheet, int line, int column, Double share) {
        if (share != null) {
            sheet.value(line, column, share);
            sheet.style(line, column).format(SHARE).set();
        }
    }

    private static void steps(Worksheet sheet, PrevalenceReport report) {
        head(sheet, List.of("step", "words", "animals"));
        int line = 1;
        for (PrevalenceReport.StepCount step : report.takenToCounted()) {
            sheet.value(line, 0, step.step().name());
            sheet.value(line, 1, step.getWords());
            sheet.value(line++, 2, step.animals());
        }
    }

    private static void unknownAge(Worksheet sheet, PrevalenceReport report) {
        head(sheet, List.of("sex", "mortalitySource", "reason", "words", "animals"));
        int line = 1;
        for (PrevalenceReport.UnknownAgeRow row : report.unknownAge().rows()) {
            sheet.value(line, 0, row.sex());
            sheet.value(line, 1, row.mortalitySource());
            sheet.value(line, 2, row.reason());
            sheet.value(line, 3, row.words());
            sheet.value(line++, 4, row.animals());
        }
    }

    private void reading(Worksheet sheet, Answer answer, URI base) {
        PrevalenceReport report = answer.report();
        List<Fact> lines = new ArrayList<>();
        lines.add(new Fact("Title", facts.title(answer)));
        if (answer.superseded() != null) {
            lines.add(new Fact("Superseded", answer.superseded()));
        }
        lines.addAll(facts.asked(answer));
        report.warnings().forEach(text -> lines.add(new Fact("Mind", text)));
        report.footnotes().forEach(note -> lines.add(new Fact("Footnote", note.text())));
        report.notes().forEach(text -> lines.add(new Fact("Note", text)));
        report.methods().forEach(m -> lines.add(new Fact("Method", m.what() + ". " + m.source())));
        report.cautions().forEach(text -> lines.add(new Fact("Caution", text)));
        lines.add(new Fact("SHA-256 of the answer as JSON", answer.digest()));
        lines.add(new Fact("Asks the same again", facts.address(answer, base)));
        for (int line = 0; line < lines.size(); line++) {
            sheet.value(line, 0, lines.get(line).what());
            sheet.value(line, 1, lines.get(line).value());
            sheet.style(line, 1).wrapText(true).set();
        }
        sheet.width(0, 28);
        sheet.width(1, 110);
    }

    static void head(Worksheet sheet, List<String> columns) {
        for (int column = 0; column < columns.size(); column++) {
            sheet.value(0, column, columns.get(column));
            sheet.width(column, 16);
        }
        sheet.range(0, 0, 0, columns.size() - 1).style().bold().set();
        sheet.freezePane(0, 1);
    }
}
