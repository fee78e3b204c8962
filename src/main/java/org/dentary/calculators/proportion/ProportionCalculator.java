package org.dentary.calculators.proportion;

import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.Arrays;
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
import org.dentary.statistics.Reliability;
import org.dentary.statistics.detection.NoneDetected;

/** One proportion, its interval beside its rivals. */
@Singleton
class ProportionCalculator implements Calculator {

    static Proportion compute(Asked asked) {
        int detected = asked.whole("detected");
        int tested = asked.whole("tested");
        IntervalMethod interval = asked.choice("interval", IntervalMethod.WILSON);
        double confidence = asked.confidence();
        asked.check();
        return Proportion.of(detected, tested, interval, confidence);
    }

    @Override
    public Entry entry() {
        return new Entry(
                Part.HOW_COMMON,
                1,
                "proportion",
                "One proportion",
                "Put an interval on detected out of tested, and see what the other methods would say.",
                "detected=6&tested=148&interval=WILSON&confidence=0.95");
    }

    @Override
    public List<Field> fields() {
        return List.of(
                Field.whole("detected", "Detected", "Animals, not tests"),
                Field.whole("tested", "Tested", "With a definite result; inconclusive and unsuitable are not counted"),
                Field.choice(
                        "interval",
                        "Interval",
                        Arrays.stream(IntervalMethod.values())
                                .map(method -> new Field.Option(method.name(), method.label()))
                                .toList()),
                Field.confidence());
    }

    @Override
    public Answer answer(Asked asked) {
        Proportion result = compute(asked);
        int tested = result.tested();
        List<Drawing.Interval> intervals = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (IntervalMethod method : IntervalMethod.values()) {
            Proportion rival = Proportion.of(result.detected(), tested, method, result.confidence());
            String name = method.label() + (method == result.interval() ? ", chosen" : "");
            intervals.add(new Drawing.Interval(name, rival.estimate(), rival.lower(), rival.upper()));
            rows.add(List.of(name, Words.percent(rival.lower(), tested), Words.percent(rival.upper(), tested)));
        }
        List<Figures> tables = new ArrayList<>();
        tables.add(new Figures(
                "Interval by method at " + Words.level(result.confidence()),
                List.of("Method", "Lower", "Upper"),
                rows));
        if (result.detected() == 0 && tested > 0) {
            tables.add(noneDetected(tested, result.confidence()));
        }
        return new Answer(
                headline(result),
                notes(result),
                new Drawing.Intervals(
                        "The interval of each method on one line, " + result.method() + " chosen",
                        "Prevalence",
                        false,
                        intervals),
                tables,
                List.of(
                        "The animals tested are a simple random sample, one result an animal.",
                        "The sample is a small part of the herd: above a tenth of it the interval is wider than need be.",
                        "The test does not err; for a test that does, see true prevalence.",
                        "Wilson covers at the level on average; where cover must be guaranteed, as for a first detection, take Clopper-Pearson or Blaker."),
                result.source());
    }

    private static String headline(Proportion result) {
        if (result.estimate() == null) {
            return "Not sampled.";
        }
        return Words.count(result.detected()) + " of " + Words.count(result.tested()) + " detected: "
                + Words.percent(result.estimate(), result.tested()) + " "
                + Words.between(result.lower(), result.upper(), result.tested()) + ", "
                + result.method() + ", " + Words.level(result.confidence()) + ".";
    }

    private static List<String> notes(Proportion result) {
        List<String> notes = new ArrayList<>(result.warnings());
        Reliability reliability = Reliability.of(result.detected(), result.tested());
        if (result.tested() > 0 && reliability.flag() != Reliability.Flag.RELIABLE) {
            notes.add("Print with a mark: " + String.join(" ", reliability.reasons()));
        }
        return notes;
    }

    private static Figures noneDetected(int tested, double confidence) {
        NoneDetected none = NoneDetected.of(tested, confidence);
        return new Figures(
                "What none detected leaves open; never mix the two limits in one report",
                List.of("Limit", "Prevalence below"),
                List.of(
                        List.of("One-sided", Words.percent(none.oneSided(), tested)),
                        List.of("Two-sided", Words.percent(none.twoSided(), tested)),
                        List.of("Rule of three, one-sided 95 %", Words.percent(none.ruleOfThree(), tested))));
    }
}
