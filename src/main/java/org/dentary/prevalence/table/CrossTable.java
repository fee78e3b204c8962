package org.dentary.prevalence.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.question.Dimension;

/**
 * A report with the values of its last dimension side by side, every row and every column added up.
 *
 * @param heads the dimensions of the rows
 * @param head the dimension of the columns
 * @param columns its values, then "All"
 * @param lines one for each row, then that of all rows
 */
public record CrossTable(List<String> heads, String head, List<String> columns, List<Line> lines) {
    /** One row: its groups, and a cell for each column. */
    public record Line(List<String> groups, List<PrevalenceTable.Row> cells) {}

    /** @param names by dimension of the report, codes to names */
    static CrossTable of(PrevalenceReport report, List<Dimension> by, List<Map<String, String>> names) {
        int last = by.size() - 1;
        Map<List<String>, List<PrevalenceTable.Row>> rows = new LinkedHashMap<>();
        report.cells().forEach(cell -> put(rows, cell, PrevalenceTable.row(cell, names), last));
        report.rowTotals().forEach(cell -> put(rows, cell, PrevalenceTable.row(cell, names), last));
        List<Line> lines = new ArrayList<>();
        rows.forEach((groups, cells) -> lines.add(new Line(groups, cells)));
        List<Map<String, String>> columnNames = List.of(names.get(last));
        List<PrevalenceTable.Row> totals = report.columnTotals().stream()
                .map(cell -> PrevalenceTable.row(cell, columnNames))
                .toList();
        List<String> all = new ArrayList<>(List.of("All"));
        for (int i = 1; i < last; i++) {
            all.add("");
        }
        lines.add(new Line(
                all,
                Stream.concat(totals.stream(), Stream.of(PrevalenceTable.row(report.total(), List.of())))
                        .toList()));
        return new CrossTable(
                by.subList(0, last).stream().map(Dimension::words).toList(),
                by.get(last).words(),
                Stream.concat(totals.stream().map(total -> total.groups().get(0)), Stream.of("All"))
                        .toList(),
                lines);
    }

    private static void put(
            Map<List<String>, List<PrevalenceTable.Row>> rows, PrevalenceCell cell, PrevalenceTable.Row row, int last) {
        rows.computeIfAbsent(row.groups().subList(0, last), groups -> new ArrayList<>())
                .add(row);
    }
}
