package org.dentary.prevalence.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
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

    /** @param names by dimension of the report, what people call its codes */
    static CrossTable of(PrevalenceReport report, List<Dimension> by, List<UnaryOperator<String>> names) {
        int last = by.size() - 1;
        // By their codes: two places may be called alike.
        Map<List<String>, List<PrevalenceTable.Row>> rows = new LinkedHashMap<>();
        Stream.concat(report.cells().stream(), report.rowTotals().stream())
                .forEach(cell -> rows.computeIfAbsent(
                                List.copyOf(cell.group().values()).subList(0, last), codes -> new ArrayList<>())
                        .add(PrevalenceTable.row(cell, names)));
        List<Line> lines = new ArrayList<>();
        rows.values().forEach(cells -> lines.add(new Line(cells.get(0).groups().subList(0, last), cells)));
        List<UnaryOperator<String>> columnNames = List.of(names.get(last));
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
}
