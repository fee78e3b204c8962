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

/** What a sample from one herd can be expected to show. */
@Singleton
class DetectionCalculator implements Calculator {
    private static final int ROWS = 12;

    static Detection compute(Asked asked) {
        AskedHerd herd = AskedHerd.of(asked);
        int tested = asked.whole("tested");
        double sensitivity = asked.number("sensitivity");
        double specificity = asked.number("specificity", 1);
        asked.check();
        return Detection.of(herd.herd(), tested, sensitivity, specificity);
    }

    @Override
    public Entry entry() {
        return new Entry(
                Part.RULED_OUT,
                10,
                "detection-probability",
                "Chance of detection",
                "What the animals tested so far could have shown, false detections included.",
                "population=2400&infected=24&tested=180&sensitivity=0.92&specificity=1");
    }

    @Override
    public List<Field> fields() {
        List<Field> fields = new ArrayList<>(AskedHerd.FIELDS);
        fields.add(Field.whole("tested", "Tested", "0 to the herd"));
        fields.add(Field.number("sensitivity", "Sensitivity", "A fraction", ""));
        fields.add(Field.number("specificity", "Specificity", "A fraction; 1 after confirmation", "1"));
        return fields;
    }

    @Override
    public Answer answer(Asked asked) {
        Detection result = compute(asked);
        Herd herd = AskedHerd.of(asked).herd();
        int tested = asked.whole("tested");
        double sensitivity = asked.number("sensitivity");
        List<List<String>> rows = new ArrayList<>();
        double more = 1;
        for (int t = 0; t < Math.min(ROWS, result.byDetected().size()); t++) {
            rows.add(List.of(
                    Words.count(t),
                    Words.chance(result.byDetected().get(t)),
                    Words.chance(Math.max(0, Math.min(1, more)))));
            more -= result.byDetected().get(t);
        }
        Drawing.Curve curve = DetectionCurve.of(herd, tested, sensitivity);
        return new Answer(
                "Testing " + Words.count(tested) + " of " + Words.count(herd.population()) + " with "
                        + Words.count(herd.infected()) + " infected: " + Words.chance(result.probability())
                        + " chance of at least one detection.",
                result.warnings(),
                new Drawing.Curves(
                        "Chance of a true detection rising with the number tested, the number at hand marked",
                        "Animals tested",
                        "Chance of a true detection",
                        List.of(curve),
                        List.of(new Drawing.Mark("tested: " + Words.count(tested), tested))),
                List.of(
                        new Figures(
                                "Chance of a true detection by animals tested",
                                List.of("Tested", "Chance"),
                                every(curve.points()).stream()
                                        .map(p -> List.of(Words.count(Math.round(p.x())), Words.chance(p.y())))
                                        .toList()),
                        new Figures(
                                "Chance of so many detections",
                                List.of("Detected", "Exactly so many", "So many or more"),
                                rows),
                        new Figures(
                                "Other figures",
                                List.of("Figure", "Chance"),
                                List.of(
                                        List.of("At least one true detection", Words.chance(result.probabilityTrue())),
                                        List.of(
                                                "At least one detection in a herd without infection",
                                                Words.chance(result.probabilityIfAbsent())),
                                        List.of("MacDiarmid (approximation)", Words.chance(result.macDiarmid())),
                                        List.of("Herd without end (approximation)", Words.chance(result.binomial()))))),
                List.of(
                        Words.count(tested) + " tested speak only for one well-mixed unit sampled at random.",
                        "Sensitivity and specificity hold for every animal alike.",
                        "None detected is not proof of absence."),
                result.method() + "; " + result.source());
    }

    /** About ten of the points, first and last among them. */
    private static List<Drawing.Point> every(List<Drawing.Point> points) {
        int step = Math.max(1, (points.size() - 1) / 10);
        List<Drawing.Point> some = new ArrayList<>();
        for (int i = 0; i < points.size(); i += step) {
            some.add(points.get(i));
        }
        return some;
    }
}
