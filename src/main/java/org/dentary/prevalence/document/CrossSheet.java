package org.dentary.prevalence.document;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.PrevalenceReport;
import org.dhatim.fastexcel.Worksheet;

/** A report's last dimension side by side: for each of its values, then for all, counts and figures in full precision. */
final class CrossSheet {
    private static final String ALL = "ALL";
    private static final List<String> FIGURES =
            List.of("counted", "detected", "prevalence", "lower", "upper", "pendingShare");

    private CrossSheet() {}

    static void write(Worksheet sheet, PrevalenceReport report) {
        List<String> rows = report.by().subList(0, report.by().size() - 1);
        List<String> columns = new ArrayList<>(report.columnTotals().stream()
                .map(cell -> cell.group().get(report.columns()))
                .toList());
        columns.add(ALL);
        List<String> heads = new ArrayList<>(rows);
        columns.forEach(column -> FIGURES.forEach(figure -> heads.add(column + " " + figure)));
        PrevalenceWorkbook.head(sheet, heads);
        Map<List<String>, Integer> lines = new LinkedHashMap<>();
        Stream.of(report.cells(), report.rowTotals(), report.columnTotals(), List.of(report.total()))
                .flatMap(List::stream)
                .forEach(cell -> {
                    List<String> group = rows.stream()
                            .map(row -> cell.group().getOrDefault(row, ALL))
                            .toList();
                    int line = lines.computeIfAbsent(group, any -> lines.size() + 1);
                    for (int i = 0; i < group.size(); i++) {
                        sheet.value(line, i, group.get(i));
                    }
                    int at = columns.indexOf(cell.group().getOrDefault(report.columns(), ALL));
                    figures(sheet, line, rows.size() + at * FIGURES.size(), cell);
                });
    }

    private static void figures(Worksheet sheet, int line, int from, PrevalenceCell cell) {
        sheet.value(line, from, cell.counted());
        sheet.value(line, from + 1, cell.detected());
        PrevalenceWorkbook.share(sheet, line, from + 2, cell.prevalence());
        PrevalenceWorkbook.share(sheet, line, from + 3, cell.lower());
        PrevalenceWorkbook.share(sheet, line, from + 4, cell.upper());
        PrevalenceWorkbook.share(sheet, line, from + 5, cell.pendingShare());
    }
}
