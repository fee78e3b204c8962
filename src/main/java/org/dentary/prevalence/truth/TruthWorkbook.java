package org.dentary.prevalence.truth;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.dentary.prevalence.performance.PerformanceSet;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/**
 * A report as a workbook: the cells with figures in full precision, the tests that the animals had, the set, and how to read
 * it. Codes stay codes, so that a workbook joins the line list; a cell that is not sampled is empty, never 0.
 */
final class TruthWorkbook {
    private static final List<String> FIGURES = List.of(
            "counted",
            "detected",
            "prevalence",
            "lower",
            "upper",
            "raw",
            "truePrevalence",
            "trueLower",
            "trueUpper",
            "truncated",
            "testedOtherwise",
            "pending",
            "flags",
            "sentence");
    private static final String SHARE = "0.0%";

    private TruthWorkbook() {}

    /** @param digest SHA-256 of the answer as JSON */
    static byte[] of(TruthReport report, String superseded, String digest) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(out, "Dentary", "1.0")) {
            cells(workbook.newWorksheet("True prevalence"), report);
            tests(workbook.newWorksheet("Tests they had"), report.tested());
            reading(workbook.newWorksheet("How to read it"), report, superseded, digest);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        return out.toByteArray();
    }

    private static void cells(Worksheet sheet, TruthReport report) {
        List<String> columns = new ArrayList<>(report.by());
        columns.addAll(FIGURES);
        head(sheet, columns);
        int line = 1;
        for (TruthCell cell : report.cells()) {
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

    private static void figures(Worksheet sheet, int line, int from, TruthCell cell) {
        sheet.value(line, from, cell.counted());
        sheet.value(line, from + 1, cell.detected());
        int column = from + 2;
        for (Double share : new Double[] {
            cell.prevalence(),
            cell.lower(),
            cell.upper(),
            cell.raw(),
            cell.truePrevalence(),
            cell.trueLower(),
            cell.trueUpper()
        }) {
            if (share != null) {
                sheet.value(line, column, share);
                sheet.style(line, column).format(SHARE).set();
            }
            column++;
        }
        sheet.value(line, column, cell.truncated());
        if (cell.testedOtherwise() != null) {
            sheet.value(line, column + 1, cell.testedOtherwise());
        }
        sheet.value(line, column + 2, cell.pending());
        sheet.value(line, column + 3, String.join(" ", cell.flags()));
        sheet.value(line, column + 4, cell.sentence());
    }

    private static void tests(Worksheet sheet, Tested tested) {
        head(sheet, List.of("method", "tissue", "pool", "inSet", "animals"));
        int line = 1;
        for (Tested.Test test : tested.tests()) {
            sheet.value(line, 0, test.method());
            sheet.value(line, 1, test.tissue());
            sheet.value(line, 2, test.pool());
            sheet.value(line, 3, test.inSet());
            sheet.value(line++, 4, test.animals());
        }
    }

    private static void reading(Worksheet sheet, TruthReport report, String superseded, String digest) {
        PerformanceSet set = report.performance();
        List<String[]> lines = new ArrayList<>();
        lines.add(new String[] {"Season", report.season()});
        lines.add(new String[] {"Disease", report.disease()});
        lines.add(new String[] {"Species", report.species()});
        lines.add(new String[] {
            "Stands on",
            report.cut() == null
                    ? "live, as of " + report.asOf()
                    : "data cut " + report.cut().name() + " (" + report.cut().id() + ") of " + report.asOf()
        });
        if (superseded != null) {
            lines.add(new String[] {"Superseded", superseded});
        }
        report.filter()
                .forEach((field, values) -> lines.add(new String[] {"Only " + field, String.join(", ", values)}));
        lines.add(new String[] {"Level of the intervals", TruthWords.level(report.confidence())});
        lines.add(new String[] {"Test performance", set.name() + " (" + set.code() + ")"});
        lines.add(new String[] {"Speaks of", TruthWords.tests(set, Map.of())});
        lines.add(new String[] {"Sensitivity", set.getSensitivityWords()});
        lines.add(new String[] {"Specificity", set.getSpecificityWords()});
        lines.add(new String[] {"Source", set.source() + "; " + set.getSeenWords()});
        report.warnings().forEach(text -> lines.add(new String[] {"Mind", text}));
        report.notes().forEach(text -> lines.add(new String[] {"Note", text}));
        report.methods().forEach(method -> lines.add(new String[] {"Method", method.what() + ". " + method.source()}));
        report.cautions().forEach(text -> lines.add(new String[] {"Caution", text}));
        lines.add(new String[] {"SHA-256 of the answer as JSON", digest});
        for (int line = 0; line < lines.size(); line++) {
            sheet.value(line, 0, lines.get(line)[0]);
            sheet.value(line, 1, lines.get(line)[1]);
            sheet.style(line, 1).wrapText(true).set();
        }
        sheet.width(0, 28);
        sheet.width(1, 110);
    }

    private static void head(Worksheet sheet, List<String> columns) {
        for (int column = 0; column < columns.size(); column++) {
            sheet.value(0, column, columns.get(column));
            sheet.width(column, 16);
        }
        sheet.range(0, 0, 0, columns.size() - 1).style().bold().set();
        sheet.freezePane(0, 1);
    }
}
