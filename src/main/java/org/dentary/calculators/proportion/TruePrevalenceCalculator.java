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
import org.dentary.statistics.TruePrevalence;
import org.dentary.statistics.TruePrevalence.Validation;

/** The true prevalence behind an apparent one. */
@Singleton
class TruePrevalenceCalculator implements Calculator {
    private static final List<String> COUNTS = List.of("truePositives", "infected", "trueNegatives", "uninfected");

    static TruePrevalence compute(Asked asked) {
        int detected = asked.whole("detected");
        int tested = asked.whole("tested");
        double confidence = asked.confidence();
        boolean estimated = COUNTS.stream().anyMatch(asked::has);
        if (!estimated) {
            double sensitivity = asked.number("sensitivity");
            double specificity = asked.number("specificity", 1);
            asked.check();
            return TruePrevalence.known(detected, tested, sensitivity, specificity, confidence);
        }
        for (String known : List.of("sensitivity", "specificity")) {
            if (asked.has(known)) {
                asked.refuse(
                        known,
                        "INVALID_VALUE",
                        known + " is given beside the counts of a validation study; give one or the other");
            }
        }
        Validation validation = new Validation(
                asked.whole("truePositives"),
                asked.whole("infected"),
                asked.whole("trueNegatives"),
                asked.whole("uninfected"));
        asked.check();
        return TruePrevalence.estimated(detected, tested, validation, confidence);
    }

    @Override
    public Entry entry() {
        return new Entry(
                Part.HOW_COMMON,
                2,
                "true-prevalence",
                "True prevalence",
                "Correct an apparent prevalence for a test that misses infected animals or detects what is not there.",
                "detected=23&tested=150&sensitivity=0.96&specificity=0.89&confidence=0.95");
    }

    @Override
    public List<Field> fields() {
        return List.of(
                Field.whole("detected", "Detected", null),
                Field.whole("tested", "Tested", null),
                Field.number(
                        "sensitivity",
                        "Sensitivity, if known",
                        "A fraction; of the animal in this herd's mix, not a constant of the test",
                        ""),
                Field.number("specificity", "Specificity, if known", "A fraction; 1 after confirmation", ""),
                Field.whole("truePositives", "Or a validation study: infected animals that the test detected", null),
                Field.whole("infected", "of how many infected", null),
                Field.whole("trueNegatives", "Uninfected animals in which the test detected nothing", null),
                Field.whole("uninfected", "of how many uninfected", null),
                Field.confidence());
    }

    @Override
    public Answer answer(Asked asked) {
        TruePrevalence result = compute(asked);
        int tested = asked.whole("tested");
        double confidence = asked.confidence();
        Proportion apparent = Proportion.of(asked.whole("detected"), tested, IntervalMethod.BLAKER, confidence);
        return new Answer(
                result.estimate() == null
                        ? "Not sampled."
                        : "True prevalence " + Words.percent(result.estimate(), tested) + " "
                                + Words.between(result.lower(), result.upper(), tested) + " at "
                                + Words.level(confidence) + "; apparent " + Words.percent(result.apparent(), tested)
                                + ".",
                result.warnings(),
                new Drawing.Intervals(
                        "Apparent prevalence above true prevalence, each with its interval",
                        "Prevalence",
                        false,
                        List.of(
                                new Drawing.Interval(
                                        "Apparent", apparent.estimate(), apparent.lower(), apparent.upper()),
                                new Drawing.Interval("True", result.estimate(), result.lower(), result.upper()))),
                List.of(
                        new Figures(
                                "Apparent and true prevalence",
                                List.of("Prevalence", "Estimate", "Lower", "Upper"),
                                List.of(
                                        List.of(
                                                "Apparent, " + apparent.method(),
                                                Words.percent(apparent.estimate(), tested),
                                                Words.percent(apparent.lower(), tested),
                                                Words.percent(apparent.upper(), tested)),
                                        List.of(
                                                "True" + (result.truncated() ? ", cut" : ""),
                                                Words.percent(result.estimate(), tested),
                                                Words.percent(result.lower(), tested),
                                                Words.percent(result.upper(), tested)))),
                        new Figures(
                                "What it rests on",
                                List.of("Quantity", "Value"),
                                List.of(
                                        List.of(
                                                "Estimate before cutting to 0 to 100 %",
                                                Words.percent(result.raw(), tested)),
                                        List.of("Sensitivity", Words.number(result.sensitivity())),
                                        List.of("Specificity", Words.number(result.specificity()))))),
                List.of(
                        "Sensitivity and specificity hold for these animals: the stage of infection and the tissue change them.",
                        "Known values are taken as without error; give the counts of the validation study where they are estimates.",
                        "The apparent prevalence is printed beside the true one, always."),
                result.source());
    }
}
