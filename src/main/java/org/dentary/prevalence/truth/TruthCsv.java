package org.dentary.prevalence.truth;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.dentary.platform.table.CsvTable;

/** The cells as CSV: dimensions, counts, apparent and true figures in full precision; empty where not sampled. */
final class TruthCsv {
    private static final List<String> COLUMNS = List.of(
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
            "confidence",
            "performance",
            "sensitivity",
            "specificity",
            "testedOtherwise",
            "pending",
            "flags",
            "sentence");

    private TruthCsv() {}

    static String of(TruthReport report) {
        List<String> columns = new ArrayList<>(report.by());
        columns.addAll(COLUMNS);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, columns)) {
            for (TruthCell cell : report.cells()) {
                List<Object> row = new ArrayList<>(cell.group().values());
                row.add(cell.counted());
                row.add(cell.detected());
                row.add(cell.prevalence());
                row.add(cell.lower());
                row.add(cell.upper());
                row.add(cell.raw());
                row.add(cell.truePrevalence());
                row.add(cell.trueLower());
                row.add(cell.trueUpper());
                row.add(cell.truncated());
                row.add(report.confidence());
                row.add(report.performance().code());
                row.add(report.performance().sensitivity());
                row.add(report.performance().specificity());
                row.add(cell.testedOtherwise());
                row.add(cell.pending());
                row.add(String.join(" ", cell.flags()));
                row.add(cell.sentence());
                csv.row(row.toArray());
            }
        }
        return out.toString(StandardCharsets.UTF_8);
    }
}
