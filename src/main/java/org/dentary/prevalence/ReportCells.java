package org.dentary.prevalence;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.linelist.LineFilter;
import org.dentary.prevalence.question.Dimension;
import org.dentary.prevalence.question.ReportQuestion;
import org.dentary.prevalence.question.Step;
import org.dentary.prevalence.table.CellFlag;
import org.dentary.prevalence.table.DimensionValues;
import org.dentary.statistics.Proportion;

/**
 * The cells of a report from its counts, those nobody is in too, and what they add up to. Every animal is in one cell, so a
 * total is the sum of its cells.
 */
final class ReportCells {
    private static final int MOST_CELLS = 5_000;

    /** Animals of one cell. */
    private record Sum(int counted, int detected, int pending) {
        Sum plus(Sum other) {
            return new Sum(counted + other.counted, detected + other.detected, pending + other.pending);
        }
    }

    private final ReportQuestion question;
    private final Map<List<String>, Sum> sums;

    private ReportCells(ReportQuestion question, Map<List<String>, Sum> sums) {
        this.question = question;
        this.sums = sums;
    }

    /** @throws InvalidInput if the dimensions make more cells than a table can show */
    static ReportCells of(ReportQuestion question, List<PrevalenceQueries.Count> counts, DimensionValues values) {
        List<Dimension> by = question.by();
        List<List<String>> axes = new ArrayList<>();
        long product = 1;
        for (int i = 0; i < by.size(); i++) {
            int at = i;
            TreeSet<String> seen = new TreeSet<>();
            counts.forEach(count -> seen.add(count.values().get(at)));
            if (by.get(i) == Dimension.SEASON) {
                seen.add(question.season());
                question.with().forEach(one -> seen.add(one.season()));
            }
            List<String> axis = values.of(by.get(i), seen, accepted(question.filter(), by.get(i)));
            axes.add(axis);
            product *= Math.max(1, axis.size());
        }
        if (product > MOST_CELLS) {
            throw InvalidInput.field(
                    "by",
                    "TOO_MANY_CELLS",
                    "these dimensions make " + product + " cells, more than the " + MOST_CELLS
                            + " that a table can show; take fewer dimensions or filter one of them");
        }
        Map<List<String>, Sum> sums = new LinkedHashMap<>();
        product(axes).forEach(group -> sums.put(group, new Sum(0, 0, 0)));
        for (PrevalenceQueries.Count count : counts) {
            if (count.step() == Step.COUNTED) {
                sums.merge(count.values(), new Sum(count.animals(), count.detected(), 0), Sum::plus);
            } else if (count.step() == Step.PENDING) {
                sums.merge(count.values(), new Sum(0, 0, count.animals()), Sum::plus);
            }
        }
        return new ReportCells(question, sums);
    }

    /** Every cell, in the order of the dimensions' values. */
    List<PrevalenceCell> all() {
        return added(dimension -> true);
    }

    /** Each row over all columns; empty where no dimension stands as columns. */
    List<PrevalenceCell> rowTotals() {
        return question.columns() == null ? List.of() : added(dimension -> dimension != question.columns());
    }

    /** Each column over all rows; empty where no dimension stands as columns. */
    List<PrevalenceCell> columnTotals() {
        return question.columns() == null ? List.of() : added(dimension -> dimension == question.columns());
    }

    /** Everybody. */
    PrevalenceCell total() {
        return added(dimension -> false).stream().findFirst().orElseGet(() -> cell(Map.of(), new Sum(0, 0, 0)));
    }

    /** Cells that are told by these dimensions alone, the others added up. */
    private List<PrevalenceCell> added(Predicate<Dimension> kept) {
        Map<Map<String, String>, Sum> added = new LinkedHashMap<>();
        sums.forEach((group, sum) -> {
            Map<String, String> fields = new LinkedHashMap<>();
            for (int i = 0; i < group.size(); i++) {
                Dimension dimension = question.by().get(i);
                if (kept.test(dimension)) {
                    fields.put(dimension.field(), group.get(i));
                }
            }
            added.merge(fields, sum, Sum::plus);
        });
        return added.entrySet().stream()
                .map(one -> cell(one.getKey(), one.getValue()))
                .toList();
    }

    private PrevalenceCell cell(Map<String, String> group, Sum sum) {
        Proportion share = Proportion.of(sum.detected(), sum.counted(), question.interval(), question.confidence());
        List<Dimension> by = question.by().stream()
                .filter(dimension -> group.containsKey(dimension.field()))
                .toList();
        return new PrevalenceCell(
                group,
                sum.counted(),
                sum.detected(),
                share.estimate(),
                share.lower(),
                share.upper(),
                sum.pending(),
                PrevalenceReport.Share.of(sum.pending(), sum.pending() + sum.counted())
                        .share(),
                CellFlag.of(by, sum.counted(), sum.detected(), sum.pending()));
    }

    private static List<String> accepted(LineFilter filter, Dimension dimension) {
        return filter.values().entrySet().stream()
                .filter(e -> e.getKey().field().equals(dimension.field()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse(null);
    }

    private static List<List<String>> product(List<List<String>> axes) {
        List<List<String>> rows = List.of(List.of());
        for (List<String> axis : axes) {
            List<List<String>> longer = new ArrayList<>();
            for (List<String> row : rows) {
                for (String value : axis) {
                    List<String> next = new ArrayList<>(row);
                    next.add(value);
                    longer.add(next);
                }
            }
            rows = longer;
        }
        return rows;
    }
}
