package org.dentary.prevalence;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.dentary.platform.table.CsvTable;

/** A report's cells as CSV: dimensions, counts, then figures in full precision; empty where not sampled. */
public final class PrevalenceCsv {
    private PrevalenceCsv() {}

    public static String of(PrevalenceReport report) {
        List<String> columns = new ArrayList<>(report.by());
        columns.addAll(List.of("counted", "detected", "prevalence", "lower", "upper", "pending", "flags"));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, columns)) {
            for (PrevalenceCell cell : report.cells()) {
                List<Object> row = new ArrayList<>(cell.group().values());
                row.add(cell.counted());
                row.add(cell.detected());
                row.add(cell.prevalence());
                row.add(cell.lower());
                row.add(cell.upper());
                row.add(cell.pending());
                row.add(String.join(" ", cell.flags()));
                csv.row(row.toArray());
            }
        }
        return out.toString(StandardCharsets.UTF_8);
    }
}
