package org.dentary.prevalence.comparison;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dentary.plan.PlanClock;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.Words;

/** The answer as the page shows it: sections of sentences, then the numbers as a table. */
record ComparisonTable(
        Comparisons answer,
        String standsOn,
        String withStandsOn,
        String superseded,
        String withSuperseded,
        List<Section> sections,
        List<Row> rows,
        List<Cell> cells) {

    /** Results of one kind. */
    record Section(String head, List<Comparison> results) {}

    /** One line of the table of numbers. */
    record Row(String kind, String about, String figure, String interval, String p, String adjusted, String verdict) {}

    /** One line of the counts; {@code other} is the other season's, or null. */
    record Cell(String age, String sex, int counted, int detected, String share, String other) {}

    static ComparisonTable of(Comparisons answer, String superseded, String withSuperseded, PlanClock clocks) {
        Map<ComparisonKind, List<Comparison>> kinds = new LinkedHashMap<>();
        answer.comparisons()
                .forEach(one -> kinds.computeIfAbsent(one.kind(), kind -> new ArrayList<>())
                        .add(one));
        List<Section> sections = new ArrayList<>();
        kinds.forEach((kind, results) -> sections.add(new Section(kind.words(), results)));
        List<Cell> cells = new ArrayList<>();
        for (int i = 0; i < answer.cells().size(); i++) {
            PrevalenceCell cell = answer.cells().get(i);
            PrevalenceCell other = answer.otherCells().isEmpty() ? null : same(answer.otherCells(), cell);
            cells.add(new Cell(
                    Words.of(cell.group().get("ageClass")),
                    Words.of(cell.group().get("sex")),
                    cell.counted(),
                    cell.detected(),
                    share(cell),
                    other == null ? "not sampled" : other.detected() + " of " + other.counted()));
        }
        return new ComparisonTable(
                answer,
                stands(answer.cut(), answer.asOf(), clocks),
                answer.with() == null
                        ? null
                        : stands(answer.with().cut(), answer.with().asOf(), clocks),
                superseded,
                withSuperseded,
                sections,
                answer.comparisons().stream().map(ComparisonTable::row).toList(),
                cells);
    }

    private static PrevalenceCell same(List<PrevalenceCell> cells, PrevalenceCell as) {
        return cells.stream()
                .filter(cell -> cell.group().equals(as.group()))
                .findFirst()
                .orElse(null);
    }

    private static String share(PrevalenceCell cell) {
        return cell.isNotSampled()
                ? PrevalenceCell.uncounted(cell.pending())
                : Words.percent(cell.prevalence(), cell.counted());
    }

    private static String stands(org.dentary.prevalence.PrevalenceReport.CutName cut, String asOf, PlanClock clocks) {
        String when = clocks.told(Instant.parse(asOf));
        return cut == null ? "live, as of " + when : "data cut “" + cut.name() + "” of " + when;
    }

    private static Row row(Comparison one) {
        Figure figure = one.figure();
        TestResult test = one.test();
        return new Row(
                one.kind().words(),
                one.about(),
                figure == null ? "" : value(figure.measure(), figure.estimate()),
                figure == null || !figure.hasLimits()
                        ? ""
                        : value(figure.measure(), figure.lower()) + " to " + value(figure.measure(), figure.upper()),
                test == null ? "" : Say.p(test.p()),
                test == null || test.adjustedP() == null ? "" : Say.p(test.adjustedP()),
                one.verdict().words());
    }

    private static String value(String measure, Double value) {
        if (value == null) {
            return "undefined";
        }
        return switch (measure) {
            case Figure.ODDS_RATIO -> "× " + Say.number(value);
            case Figure.PREVALENCE -> Say.points(value) + " %";
            case Figure.SLOPE -> Say.points(value) + " points a year";
            default -> Say.points(value) + " points";
        };
    }
}
