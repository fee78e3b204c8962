package org.dentary.prevalence.truth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.question.Dimension;
import org.dentary.prevalence.table.CellFlag;
import org.dentary.prevalence.table.DimensionValues;

/** A report as the page shows it: words for codes, percentages with no more digits than the counted carry. */
record TruthTable(TruthReport report, List<String> heads, List<Row> rows, Row total) {
    /** One line; {@code share} says "not sampled" or "no result yet" where nobody was counted, {@code raw} told where the estimate was cut. */
    record Row(
            List<String> groups,
            int counted,
            int detected,
            String share,
            String limits,
            String truth,
            String truthLimits,
            String raw,
            String sentence,
            String otherwise,
            int pending,
            String flags,
            TruthCell cell) {}

    static TruthTable of(TruthReport report, DimensionValues values) {
        List<Dimension> by = report.by().stream()
                .map(field -> Arrays.stream(Dimension.values())
                        .filter(dimension -> dimension.field().equals(field))
                        .findFirst()
                        .orElseThrow())
                .toList();
        List<UnaryOperator<String>> names = by.stream().map(values::words).toList();
        return new TruthTable(
                report,
                by.stream().map(Dimension::words).toList(),
                report.cells().stream().map(cell -> row(cell, names)).toList(),
                row(report.total(), List.of()));
    }

    /** The lines of those of whom somebody was counted. */
    public List<Row> getSampled() {
        return rows.stream().filter(row -> row.counted() > 0).toList();
    }

    private static Row row(TruthCell cell, List<UnaryOperator<String>> names) {
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
                limits(cell.lower(), cell.upper(), n),
                cell.isNotSampled()
                        ? PrevalenceCell.uncounted(cell.pending())
                        : TruthWords.share(cell.truePrevalence(), n),
                limits(cell.trueLower(), cell.trueUpper(), n),
                cell.truncated() ? TruthWords.share(cell.raw(), n) : "",
                cell.sentence(),
                cell.testedOtherwise() == null ? "not told" : String.valueOf(cell.testedOtherwise()),
                cell.pending(),
                CellFlag.told(cell.flags()),
                cell);
    }

    private static String limits(Double lower, Double upper, int n) {
        return lower == null ? "" : TruthWords.share(lower, n) + " to " + TruthWords.share(upper, n);
    }
}
