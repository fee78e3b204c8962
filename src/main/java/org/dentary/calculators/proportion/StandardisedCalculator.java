package org.dentary.calculators.proportion;

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
import org.dentary.statistics.standardisation.Standardised;

/** A prevalence standardised to a reference herd, beside the crude one. */
@Singleton
class StandardisedCalculator implements Calculator {

    @Override
    public Entry entry() {
        return new Entry(
                Part.HOW_COMMON,
                3,
                "standardised",
                "Standardized prevalence",
                "Weigh age and sex classes by a reference herd, so that seasons with different bags can be compared.",
                "strata=Fawns%2C+0%2C+38%2C+310%0AYearlings%2C+3%2C+61%2C+240%0AAdult+females%2C+5%2C+84%2C+330%0AAdult+males%2C+12%2C+96%2C+120&confidence=0.95");
    }

    @Override
    public List<Field> fields() {
        return List.of(
                Field.rows(
                        "strata",
                        "Classes",
                        "One a line: name, detected, tested, weight. The weight is the class's share or number in the reference herd."),
                Field.confidence());
    }

    private static Standardise read(Asked asked) {
        List<Standardise.Stratum> strata = asked.rows("strata").stream()
                .map(row -> new Standardise.Stratum(
                        row.text(0), row.whole(1, "detected"), row.whole(2, "tested"), row.number(3, "weight")))
                .toList();
        double confidence = asked.confidence();
        asked.check();
        return new Standardise(confidence, strata);
    }

    @Override
    public Answer answer(Asked asked) {
        Standardise read = read(asked);
        Standardised result = read.compute();
        int detected =
                read.strata().stream().mapToInt(Standardise.Stratum::detected).sum();
        int tested =
                read.strata().stream().mapToInt(Standardise.Stratum::tested).sum();
        Proportion crude = Proportion.of(detected, tested, IntervalMethod.CLOPPER_PEARSON, read.level());
        List<Drawing.Interval> intervals = List.of(
                new Drawing.Interval("Crude, Clopper-Pearson", crude.estimate(), crude.lower(), crude.upper()),
                new Drawing.Interval("Effective sample size", result.estimate(), result.lower(), result.upper()),
                new Drawing.Interval(
                        "Gamma (Fay-Feuer)",
                        result.estimate(),
                        result.gamma().lower(),
                        clipped(result.gamma().upper())),
                new Drawing.Interval(
                        "Gamma (Tiwari)",
                        result.estimate(),
                        result.tiwari().lower(),
                        clipped(result.tiwari().upper())),
                new Drawing.Interval(
                        "Stratified Wilson",
                        result.estimate(),
                        result.stratifiedWilson().lower(),
                        result.stratifiedWilson().upper()));
        return new Answer(
                "Standardized prevalence " + Words.percent(result.estimate(), tested) + " "
                        + Words.between(result.lower(), result.upper(), tested) + " at " + Words.level(read.level())
                        + "; crude " + Words.percent(result.crude(), tested) + ", " + Words.count(detected) + " of "
                        + Words.count(tested) + ".",
                result.warnings(),
                new Drawing.Intervals(
                        "The crude prevalence above the standardized one with four kinds of interval",
                        "Prevalence",
                        false,
                        intervals),
                List.of(
                        new Figures(
                                "Crude and standardized prevalence at " + Words.level(read.level()),
                                List.of("Figure", "Estimate", "Lower", "Upper"),
                                intervals.stream()
                                        .map(i -> List.of(
                                                i.label(),
                                                Words.percent(i.estimate(), tested),
                                                Words.percent(i.lower(), tested),
                                                Words.percent(i.upper(), tested)))
                                        .toList()),
                        new Figures(
                                "By class",
                                List.of("Class", "Detected", "Tested", "Prevalence", "Weight"),
                                read.strata().stream()
                                        .map(s -> List.of(
                                                s.label(),
                                                Words.count(s.detected()),
                                                Words.count(s.tested()),
                                                s.tested() == 0
                                                        ? "not sampled"
                                                        : Words.percent((double) s.detected() / s.tested(), s.tested()),
                                                Words.number(s.weight())))
                                        .toList())),
                List.of(
                        "The reference herd was fixed before the results were seen; name it and date it beside the figure.",
                        "Within a class the animals tested are a random sample of it.",
                        "Effective sample size: " + Words.tenths(result.effectiveN()) + " animals.",
                        "Gamma limits were made for rates; above 100 % they are drawn and printed at 100 %."),
                result.source());
    }

    private static double clipped(double limit) {
        return Math.min(1, limit);
    }
}
