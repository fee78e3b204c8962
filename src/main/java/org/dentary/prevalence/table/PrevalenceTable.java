package org.dentary.prevalence.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.question.Dimension;

/**
 * A report as the page shows it: words for codes, percentages with no more digits than n carries.
 *
 * @param across the same with one dimension as columns, where that was asked for; else null
 */
public record PrevalenceTable(
        PrevalenceReport report, List<String> heads, List<Row> rows, Row total, CrossTable across) {
    /** One line of the table; {@code share} says "not sampled" or "no result yet" where nobody was counted. */
    public record Row(
            List<String> groups,
            int counted,
            int detected,
            String share,
            String limits,
            int pending,
            String pendingShare,
            String marks,
            String flags) {
        /** "3 of 45", the detected first. */
        public String of() {
            return detected + " of " + counted;
        }

        /** "5 pending (10.0 %)"; empty where nothing is. */
        public String waiting() {
            return pending == 0 ? "" : pending + " pending (" + pendingShare + ")";
        }
    }

    public static PrevalenceTable of(PrevalenceReport report, DimensionValues values) {
        List<Dimension> by = Dimension.parse(String.join(",", report.by()));
        List<UnaryOperator<String>> names = by.stream().map(values::words).toList();
        return new PrevalenceTable(
                report,
                by.stream().map(Dimension::words).toList(),
                report.cells().stream().map(cell -> row(cell, names)).toList(),
                row(report.total(), List.of()),
                report.columns() == null ? null : CrossTable.of(report, by, names));
    }

    /** What the marks of this table mean, in the order of the flags; empty where there are none. */
    public String legend() {
        List<String> names = Stream.of(
                        report.cells(), report.rowTotals(), report.columnTotals(), List.of(report.total()))
                .flatMap(List::stream)
                .flatMap(cell -> cell.flags().stream())
                .distinct()
                .sorted(Comparator.comparing(CellFlag::order))
                .toList();
        return CellFlag.told(names);
    }

    static Row row(PrevalenceCell cell, List<UnaryOperator<String>> names) {
        List<String> groups = new ArrayList<>();
        int i = 0;
        for (String value : cell.group().values()) {
            groups.add(names.get(i++).apply(value));
        }
        int n = cell.counted();
        return new Row(
                groups,
                n,
                cell.detected(),
                cell.isNotSampled() ? PrevalenceCell.uncounted(cell.pending()) : Words.percent(cell.prevalence(), n),
                cell.isNotSampled() ? "" : Words.percent(cell.lower(), n) + " to " + Words.percent(cell.upper(), n),
                cell.pending(),
                cell.pending() == 0 ? "" : Words.percent(cell.pendingShare(), n + cell.pending()),
                CellFlag.marks(cell.flags()),
                CellFlag.told(cell.flags()));
    }
}
