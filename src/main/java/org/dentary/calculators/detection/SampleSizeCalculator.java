package org.dentary.calculators.detection;

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
import org.dentary.statistics.detection.Detection;
import org.dentary.statistics.detection.Herd;
import org.dentary.statistics.detection.SampleSize;

/** How many to test so that an infected herd is found out. */
@Singleton
class SampleSizeCalculator implements Calculator {

    static SampleSize compute(Asked asked) {
        AskedHerd herd = AskedHerd.of(asked);
        double sensitivity = asked.number("sensitivity");
        double confidence = asked.confidence();
        asked.check();
        return herd.infected() == null
                ? SampleSize.of(herd.population(), herd.designPrevalence(), sensitivity, confidence)
                : SampleSize.of(herd.herd(), sensitivity, confidence);
    }

    @Override
    public Entry entry() {
        return new Entry(
                Part.RULED_OUT,
                9,
                "sample-size",
                "How many to test",
                "The smallest sample that finds out an infected herd with the chance wanted.",
                "population=2400&designPrevalence=0.01&sensitivity=0.92&confidence=0.95");
    }

    @Override
    public List<Field> fields() {
        List<Field> fields = new ArrayList<>(AskedHerd.FIELDS);
        fields.add(Field.number("sensitivity", "Sensitivity", "A fraction; of the animal in this herd's mix", ""));
        fields.add(Field.number("confidence", "Chance of detection wanted", "A fraction, such as 0.95", "0.95"));
        return fields;
    }

    @Override
    public Answer answer(Asked asked) {
        SampleSize result = compute(asked);
        Herd herd = AskedHerd.of(asked).herd();
        double sensitivity = asked.number("sensitivity");
        double confidence = asked.confidence();
        boolean attainable = result.required() != null;
        int shown = attainable ? result.required() : herd.population();
        return new Answer(
                attainable
                        ? "Test " + Words.count(shown) + " of " + Words.count(herd.population()) + ": "
                                + Words.chance(result.achieved()) + " chance to detect " + Words.count(herd.infected())
                                + " infected."
                        : "Unattainable with this herd and this test.",
                result.warnings(),
                new Drawing.Curves(
                        "Chance of detection rising with the number tested, the sample needed marked",
                        "Animals tested",
                        "Chance of detection",
                        List.of(DetectionCurve.of(herd, shown, sensitivity)),
                        attainable ? List.of(new Drawing.Mark("needed: " + Words.count(shown), shown)) : List.of()),
                List.of(
                        curve(herd, shown, sensitivity),
                        new Figures(
                                "Needed, by method",
                                List.of("Method", "Animals"),
                                List.of(
                                        List.of("Exact", attainable ? Words.count(result.required()) : "unattainable"),
                                        List.of(
                                                "Cannon and Roe, perfect test (approximation)",
                                                Words.count(result.cannonRoe())),
                                        List.of(
                                                "With sensitivity (approximation)",
                                                result.withSensitivity() == null
                                                        ? "more than the herd"
                                                        : Words.count(result.withSensitivity())),
                                        List.of(
                                                "Herd without end (approximation)",
                                                Words.count(result.infinitePopulation()))))),
                assumptions(shown, herd, confidence),
                result.method() + "; " + result.source());
    }

    private static Figures curve(Herd herd, int shown, double sensitivity) {
        List<List<String>> rows = new ArrayList<>();
        int before = -1;
        for (double share : new double[] {0.25, 0.5, 0.75, 1, 1.5}) {
            int tested = (int) Math.min(herd.population(), Math.round(share * shown));
            if (tested > before) {
                double chance =
                        Detection.curve(herd, List.of(tested), sensitivity).get(0);
                rows.add(List.of(Words.count(tested), Words.chance(chance)));
            }
            before = tested;
        }
        return new Figures("Chance of detection by animals tested", List.of("Tested", "Chance of detection"), rows);
    }

    private static List<String> assumptions(int shown, Herd herd, double confidence) {
        return List.of(
                Words.count(shown) + " tested rules out " + Words.number(100 * herd.prevalence())
                        + " % only for one well-mixed unit sampled at random, with a chance of "
                        + Words.level(confidence)
                        + ". Infection that lies in a corner of the unit is missed far more often.",
                "Infected means " + Words.animals(herd.infected()) + " of " + Words.count(herd.population())
                        + "; a fraction of an animal is rounded down, at least 1.",
                "The test detects nothing where there is nothing: detections are confirmed.",
                "None detected in such a sample is not proof of absence.");
    }
}
