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
import org.dentary.statistics.comparison.Estimate;
import org.dentary.statistics.comparison.Stratified;
import org.dentary.statistics.comparison.TestStatistic;
import org.dentary.statistics.comparison.TwoProportions;

/** Two groups compared within strata and pooled, the strata beside. */
@Singleton
class StratifiedCalculator implements Calculator {

    @Override
    public Entry entry() {
        return new Entry(
                Part.DIFFERENT,
                6,
                "stratified",
                "Strata, pooled",
                "Compare males with females within age classes, and ask whether the classes agree.",
                "strata=Fawns%2C+1%2C+52%2C+1%2C+60%0AYearlings%2C+4%2C+71%2C+2%2C+66%0AAdults%2C+19%2C+110%2C+9%2C+140&confidence=0.95");
    }

    @Override
    public List<Field> fields() {
        return List.of(
                Field.rows(
                        "strata",
                        "Strata",
                        "One a line: name, detected and not detected in the first group, detected and not detected in the second"),
                Field.confidence());
    }

    private static PoolStrata read(Asked asked) {
        List<PoolStrata.Stratum> strata = asked.rows("strata").stream()
                .map(row -> new PoolStrata.Stratum(
                        row.text(0),
                        row.whole(1, "detected in the first group"),
                        row.whole(2, "not detected in the first group"),
                        row.whole(3, "detected in the second group"),
                        row.whole(4, "not detected in the second group")))
                .toList();
        double confidence = asked.confidence();
        asked.check();
        return new PoolStrata(confidence, strata);
    }

    @Override
    public Answer answer(Asked asked) {
        PoolStrata read = read(asked);
        Stratified result = read.compute();
        List<Drawing.Interval> intervals = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (PoolStrata.Stratum stratum : read.strata()) {
            if (stratum.detected1() + stratum.notDetected1() > TwoProportions.MOST_TESTED
                    || stratum.detected2() + stratum.notDetected2() > TwoProportions.MOST_TESTED) {
                rows.add(List.of(stratum.label(), "too many animals for exact limits", "", ""));
                continue;
            }
            Estimate exact = exact(stratum, read.level());
            intervals.add(new Drawing.Interval(stratum.label(), exact.estimate(), exact.lower(), exact.upper()));
            rows.add(TwoProportionsCalculator.ratio(stratum.label() + ", exact", exact));
        }
        Estimate pooled = result.oddsRatio();
        intervals.add(new Drawing.Interval("Pooled", pooled.estimate(), pooled.lower(), pooled.upper()));
        rows.add(TwoProportionsCalculator.ratio("Pooled, Mantel-Haenszel", pooled));
        rows.add(List.of("All thrown together", Words.number(result.crudeOddsRatio()), "", ""));
        return new Answer(
                "Common odds ratio " + Words.number(pooled.estimate()) + " (" + Words.number(pooled.lower()) + " to "
                        + Words.number(pooled.upper()) + ") at " + Words.level(read.level())
                        + "; do the strata agree? Breslow-Day-Tarone p "
                        + Words.p(result.breslowDayTarone().p()) + ".",
                result.warnings(),
                new Drawing.Intervals(
                        "The odds ratio of each stratum above the pooled one, on a logarithmic line",
                        "Odds ratio, first over second group",
                        true,
                        intervals),
                List.of(
                        new Figures("Odds ratios", List.of("Stratum", "Estimate", "Lower", "Upper"), rows),
                        new Figures(
                                "Other pooled figures",
                                List.of("Figure", "Estimate", "Lower", "Upper"),
                                List.of(
                                        TwoProportionsCalculator.ratio("Risk ratio", result.riskRatio()),
                                        TwoProportionsCalculator.ratio("Risk difference", result.riskDifference()))),
                        new Figures(
                                "Tests",
                                List.of("Test", "Chi-square", "Degrees of freedom", "p"),
                                List.of(
                                        test(
                                                "No association (Cochran-Mantel-Haenszel)",
                                                result.cochranMantelHaenszel()),
                                        test(
                                                "One odds ratio for all (Breslow-Day-Tarone)",
                                                result.breslowDayTarone())))),
                List.of(
                        "Within a stratum the two groups are independent random samples.",
                        "One odds ratio fits all strata: when Breslow-Day-Tarone p is below 0.05, read the strata, not the pooled figure.",
                        "A stratum without animals is dropped; one with an empty margin says nothing about agreement."),
                result.oddsRatio().source() + "; " + result.breslowDayTarone().source());
    }

    private static Estimate exact(PoolStrata.Stratum s, double confidence) {
        return TwoProportions.of(
                        s.detected1(),
                        s.detected1() + s.notDetected1(),
                        s.detected2(),
                        s.detected2() + s.notDetected2(),
                        confidence)
                .oddsRatio()
                .conditional();
    }

    static List<String> test(String name, TestStatistic test) {
        return List.of(
                name,
                Words.number(test.statistic()),
                test.degreesOfFreedom() == null ? "none" : Words.count(test.degreesOfFreedom()),
                Words.p(test.p()));
    }
}
