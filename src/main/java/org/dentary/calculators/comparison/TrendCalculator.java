package org.dentary.calculators.comparison;

import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.List;
import org.dentary.calculators.Answer;
import org.dentary.calculators.Answer.Figures;
import org.dentary.calculators.Asked;
import org.dentary.calculators.Calculator;
import org.dentary.calculators.Drawing;
import org.dentary.calculators.Field;
import org.dentary.calculators.Words;
import org.dentary.statistics.IntervalMethod;
import org.dentary.statistics.Proportion;
import org.dentary.statistics.comparison.Trend;

/** A trend over ages, and what a straight line leaves unexplained. */
@Singleton
class TrendCalculator implements Calculator {

    @Override
    public Entry entry() {
        return new Entry(
                Part.DIFFERENT,
                7,
                "trend",
                "Trend over ages",
                "Ask whether prevalence rises with age, and whether a straight line hides a hump.",
                "groups=Fawns%2C+0.5%2C+1%2C+92%0AYearlings%2C+1.5%2C+6%2C+118%0A2.5+years%2C+2.5%2C+14%2C+101%0A3.5+years%2C+3.5%2C+11%2C+64%0A4.5+and+older%2C+5.5%2C+4%2C+47");
    }

    @Override
    public List<Field> fields() {
        return List.of(
                Field.rows(
                        "groups",
                        "Groups",
                        "One a line: name, score, detected, tested. The score is a real age in years, not the class's number."));
    }

    private static FindTrend read(Asked asked) {
        List<FindTrend.Group> groups = asked.rows("groups").stream()
                .map(row -> new FindTrend.Group(
                        row.text(0), row.number(1, "score"), row.whole(2, "detected"), row.whole(3, "tested")))
                .toList();
        asked.check();
        return new FindTrend(groups);
    }

    @Override
    public Answer answer(Asked asked) {
        FindTrend read = read(asked);
        Trend result = read.compute();
        List<Drawing.Point> points = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (FindTrend.Group group : read.groups()) {
            Proportion share = Proportion.of(group.detected(), group.tested(), IntervalMethod.WILSON, 0.95);
            rows.add(List.of(
                    group.label(),
                    Words.number(group.score()),
                    Words.count(group.detected()),
                    Words.count(group.tested()),
                    group.tested() == 0 ? "not sampled" : Words.percent(share.estimate(), group.tested()),
                    group.tested() == 0 ? "" : Words.percent(share.lower(), group.tested()),
                    group.tested() == 0 ? "" : Words.percent(share.upper(), group.tested())));
            if (share.estimate() != null) {
                points.add(new Drawing.Point(group.score(), share.estimate(), share.lower(), share.upper()));
            }
        }
        List<Drawing.Curve> curves = new ArrayList<>();
        curves.add(new Drawing.Curve("Prevalence with Wilson interval", false, true, points));
        if (result.slope() != null) {
            curves.add(new Drawing.Curve("Straight line", true, false, line(read, result.slope())));
        }
        return new Answer(
                result.slope() == null
                        ? "No trend can be computed."
                        : "Prevalence changes by " + Words.tenths(100 * result.slope())
                                + " percentage points a unit of score; trend p "
                                + Words.p(result.trend().p()) + ", departure from the line p "
                                + Words.p(result.departure().p()) + ".",
                result.warnings(),
                new Drawing.Curves(
                        "Prevalence of each group over its score with the straight line of the trend",
                        "Score",
                        "Prevalence",
                        curves,
                        List.of()),
                List.of(
                        new Figures(
                                "Prevalence by group, Wilson interval at 95 %",
                                List.of("Group", "Score", "Detected", "Tested", "Prevalence", "Lower", "Upper"), rows),
                        new Figures(
                                "Tests",
                                List.of("Test", "Chi-square", "Degrees of freedom", "p"),
                                List.of(
                                        StratifiedCalculator.test("Trend (Cochran-Armitage)", result.trend()),
                                        StratifiedCalculator.test(
                                                "Any difference between groups", result.heterogeneity()),
                                        StratifiedCalculator.test("Departure from the line", result.departure())))),
                List.of(
                        "The scores are real quantities and are printed with the result.",
                        "A trend alone misleads where prevalence rises and then falls: a small p of departure says so.",
                        "Test each sex by itself, and print how many tests were made."),
                result.trend().source());
    }

    /** The fitted line from the lowest to the highest score of the groups with animals. */
    private static List<Drawing.Point> line(FindTrend read, double slope) {
        List<FindTrend.Group> used =
                read.groups().stream().filter(group -> group.tested() > 0).toList();
        double n = used.stream().mapToDouble(FindTrend.Group::tested).sum();
        double x = used.stream().mapToDouble(FindTrend.Group::detected).sum();
        double mean = used.stream().mapToDouble(g -> g.tested() * g.score()).sum() / n;
        double low = used.stream().mapToDouble(FindTrend.Group::score).min().orElseThrow();
        double high = used.stream().mapToDouble(FindTrend.Group::score).max().orElseThrow();
        return List.of(
                new Drawing.Point(low, x / n + slope * (low - mean)),
                new Drawing.Point(high, x / n + slope * (high - mean)));
    }
}
