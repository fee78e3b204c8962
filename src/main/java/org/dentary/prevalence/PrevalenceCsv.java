package org.dentary.prevalence;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.dentary.platform.table.CsvTable;

/**
 * A report's cells as CSV: dimensions, counts, then figures in full precision; empty where not sampled. Where a dimension
 * stands as columns, rows that are added up follow, {@code ALL} in place of what they are added up over.
 */
public final class PrevalenceCsv {
    private PrevalenceCsv() {}

    public static String of(PrevalenceReport report) {
        List<String> columns = new ArrayList<>(report.by());
        columns.addAll(
                List.of("counted", "detected", "prevalence", "lower", "upper", "pending", "pendingShare", "flags"));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, columns)) {
            report.cells().forEach(cell -> row(csv, report, cell));
            if (report.columns() != null) {
                Stream.of(report.rowTotals(), report.columnTotals(), List.of(report.total()))
                        .flatMap(List::stream)
                        .forEach(cell -> row(csv, report, cell));
            }
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    private static void row(CsvTable csv, PrevalenceReport report, PrevalenceCell cell) {
        List<Object> row = new ArrayList<>();
        report.by().forEach(dimension -> row.add(cell.group().getOrDefault(dimension, "ALL")));
        row.add(cell.counted());
        row.add(cell.detected());
        row.add(cell.prevalence());
        row.add(cell.lower());
        row.add(cell.upper());
        row.add(cell.pending());
        row.add(cell.pendingShare());
        row.add(String.join(" ", cell.flags()));
        csv.row(row.toArray());
    }
}
