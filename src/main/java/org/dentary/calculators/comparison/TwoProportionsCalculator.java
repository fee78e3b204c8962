package org.dentary.calculators.comparison;

import jakarta.inject.Singleton;
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
import org.dentary.statistics.comparison.Estimate;
import org.dentary.statistics.comparison.TwoProportions;

/** Two proportions compared: males and females, this season and the last. */
@Singleton
class TwoProportionsCalculator implements Calculator {

    static TwoProportions compute(Asked asked) {
        int detected1 = asked.whole("detected1");
        int tested1 = asked.whole("tested1");
        int detected2 = asked.whole("detected2");
        int tested2 = asked.whole("tested2");
        double confidence = asked.confidence();
        asked.check();
        return TwoProportions.of(detected1, tested1, detected2, tested2, confidence);
    }

    @Override
    public Entry entry() {
        return new Entry(
                Part.DIFFERENT,
                5,
                "two-proportions",
                "Two proportions",
                "Compare males with females, or this season with the last.",
                "detected1=12&tested1=96&detected2=5&tested2=84&confidence=0.95");
    }

    @Override
    public List<Field> fields() {
        return List.of(
                Field.whole("detected1", "Detected in the first group", null),
                Field.whole("tested1", "Tested in the first group", null),
                Field.whole("detected2", "Detected in the second group", null),
                Field.whole("tested2", "Tested in the second group", null),
                Field.confidence());
    }

    @Override
    public Answer answer(Asked asked) {
        TwoProportions result = compute(asked);
        double confidence = asked.confidence();
        int tested1 = asked.whole("tested1");
        int tested2 = asked.whole("tested2");
        Proportion first = Proportion.of(asked.whole("detected1"), tested1, IntervalMethod.WILSON, confidence);
        Proportion second = Proportion.of(asked.whole("detected2"), tested2, IntervalMethod.WILSON, confidence);
        int fewest = Math.min(tested1, tested2);
        Estimate difference = result.difference();
        return new Answer(
                difference.estimate() == null
                        ? "Nothing to compare."
                        : "First minus second: " + Words.percent(difference.estimate(), fewest) + " "
                                + Words.between(difference.lower(), difference.upper(), fewest) + " at "
                                + Words.level(confidence) + "; Fisher p "
                                + Words.p(result.fisher().twoSided()) + ".",
                result.warnings(),
                new Drawing.Intervals(
                        "The two prevalences with Wilson intervals, and their difference with Newcombe's",
                        "Prevalence, and difference",
                        false,
                        List.of(
                                new Drawing.Interval("First", first.estimate(), first.lower(), first.upper()),
                                new Drawing.Interval("Second", second.estimate(), second.lower(), second.upper()),
                                new Drawing.Interval(
                                        "Difference", difference.estimate(), difference.lower(), difference.upper()))),
                List.of(
                        new Figures(
                                "Prevalence and difference",
                                List.of("Figure", "Estimate", "Lower", "Upper"),
                                List.of(
                                        share("First, Wilson", first.estimate(), first.lower(), first.upper(), tested1),
                                        share(
                                                "Second, Wilson",
                                                second.estimate(),
                                                second.lower(),
                                                second.upper(),
                                                tested2),
                                        share(
                                                "Difference, Newcombe",
                                                difference.estimate(),
                                                difference.lower(),
                                                difference.upper(),
                                                fewest))),
                        ratios(result),
                        tests(result)),
                List.of(
                        "The two groups are independent random samples; no animal is in both.",
                        "A large p is not evidence of no difference: read the interval.",
                        "Last season's figure is an estimate too: compare two samples, not a sample with a fixed number.",
                        "Where age and sex differ between the groups, pool within strata instead."),
                "Newcombe 1998, Stat Med 17:873-890; Katz and others 1978, Biometrics 34:469-474; Woolf 1955, Ann Hum Genet 19:251-253; "
                        + "Cornfield 1956; Fisher 1935; Campbell 2007, Stat Med 26:3661-3675");
    }

    private static List<String> share(String name, Double estimate, Double lower, Double upper, int tested) {
        return List.of(
                name, Words.percent(estimate, tested), Words.percent(lower, tested), Words.percent(upper, tested));
    }

    private static Figures ratios(TwoProportions result) {
        return new Figures(
                "Ratios",
                List.of("Ratio", "Estimate", "Lower", "Upper"),
                List.of(
                        ratio("Risk ratio, Katz", result.riskRatio()),
                        ratio("Odds ratio, Woolf", result.oddsRatio().woolf()),
                        ratio(
                                "Odds ratio, 1/2 added to every cell",
                                result.oddsRatio().haldaneAnscombe()),
                        ratio("Odds ratio, exact", result.oddsRatio().conditional())));
    }

    static List<String> ratio(String name, Estimate estimate) {
        return List.of(
                name,
                Words.number(estimate.estimate()),
                Words.number(estimate.lower()),
                Words.number(estimate.upper()));
    }

    private static Figures tests(TwoProportions result) {
        return new Figures(
                "Tests",
                List.of("Test", "p"),
                List.of(
                        List.of("Fisher, two-sided", Words.p(result.fisher().twoSided())),
                        List.of("Fisher, mid-P", Words.p(result.fisher().midP())),
                        List.of("Fisher, first smaller", Words.p(result.fisher().less())),
                        List.of("Fisher, first larger", Words.p(result.fisher().greater())),
                        List.of("Chi-square", Words.p(result.chiSquare().p())),
                        List.of(
                                "Chi-square times (N - 1)/N",
                                Words.p(result.chiSquareN1().p()))));
    }
}
