package org.dentary.calculators.detection;

import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.dentary.calculators.Answer;
import org.dentary.calculators.Answer.Figures;
import org.dentary.calculators.Asked;
import org.dentary.calculators.Calculator;
import org.dentary.calculators.Drawing;
import org.dentary.calculators.Field;
import org.dentary.calculators.Words;
import org.dentary.statistics.detection.WeightedPoints;
import org.dentary.statistics.detection.WeightedPoints.Convention;
import org.dentary.statistics.detection.WeightedPoints.Tally;

/** Risk-weighted points before first detection. */
@Singleton
class WeightedPointsCalculator implements Calculator {
    private static final int POINTS = 60;

    @Override
    public Entry entry() {
        return new Entry(
                Part.RULED_OUT,
                12,
                "weighted-points",
                "Risk-weighted points",
                "Count animals by how likely their class is to be infected, before a first detection.",
                "designPrevalence=0.01&sensitivity=0.92&confidence=0.95&classes=Class+A+%28invented%29%2C+120%2C+1%0AClass+B+%28invented%29%2C+85%2C+0.4%0AClass+C+%28invented%29%2C+6%2C+5");
    }

    @Override
    public List<Field> fields() {
        return List.of(
                Field.number("designPrevalence", "Design prevalence", "A fraction, such as 0.01", ""),
                Field.number("sensitivity", "Sensitivity", "A fraction", ""),
                Field.number("confidence", "Chance of detection wanted", "A fraction, such as 0.95", "0.95"),
                Field.rows(
                        "classes",
                        "Classes",
                        "One a line: name, tested, relative risk (1 for the reference class), and, for all or none, share of the herd. "
                                + "Dentary ships no relative risks: take them from a study of your species, herd and source, and cite it."));
    }

    private static CountPoints read(Asked asked) {
        double designPrevalence = asked.number("designPrevalence");
        double sensitivity = asked.number("sensitivity");
        double confidence = asked.confidence();
        List<CountPoints.RiskClass> classes = asked.rows("classes").stream()
                .map(row -> new CountPoints.RiskClass(
                        row.text(0),
                        row.whole(1, "tested"),
                        row.optional(2, "relative risk"),
                        row.optional(3, "share of the herd")))
                .toList();
        asked.check();
        return new CountPoints(designPrevalence, sensitivity, confidence, classes);
    }

    @Override
    public Answer answer(Asked asked) {
        CountPoints read = read(asked);
        WeightedPoints result = read.compute();
        boolean mean = result.convention() == Convention.POPULATION_MEAN;
        List<List<String>> rows = new ArrayList<>();
        rows.add(row("Design prevalence of the reference class", result.referenceClass()));
        if (mean) {
            rows.add(row("Design prevalence of the whole herd", result.populationMean()));
        }
        return new Answer(
                Words.tenths(result.points()) + " of " + Words.tenths(result.required()) + " points; "
                        + Words.chance(result.probability()) + " chance of at least one detection at "
                        + Words.level(read.designPrevalence())
                        + (mean ? " of the whole herd." : " of the reference class."),
                result.warnings(),
                new Drawing.Curves(
                        "Chance of detection rising with points, if the same mix of classes were tested, points earned and needed marked",
                        "Points",
                        "Chance of detection",
                        List.of(new Drawing.Curve(
                                "Chance of detection, same mix of classes", true, false, curve(result))),
                        List.of(
                                new Drawing.Mark("earned", result.points()),
                                new Drawing.Mark("needed", result.required()))),
                List.of(
                        new Figures(
                                "Points earned and needed at " + Words.level(read.level()),
                                List.of(
                                        "Convention",
                                        "Points",
                                        "Needed",
                                        "Chance of detection",
                                        "None detected leaves open"),
                                rows),
                        new Figures(
                                "By class",
                                List.of("Class", "Tested", "Relative risk", "Points"),
                                read.classes().stream()
                                        .map(c -> List.of(
                                                c.label(),
                                                Words.count(c.tested()),
                                                c.relativeRisk() == null
                                                        ? "none given"
                                                        : Words.number(c.relativeRisk()),
                                                Words.tenths(
                                                        c.relativeRisk() == null ? 0 : c.tested() * c.relativeRisk())))
                                        .toList())),
                List.of(
                        "The relative risks fit this species, this herd and this source of animals; cite the study they come from.",
                        "Within a class the animals tested are a random sample of it, in one well-mixed unit.",
                        "Weights hold before the first detection only; suspects count here and never in prevalence.",
                        "An animal of unknown class earns the lowest relative risk of those it may belong to."),
                result.source());
    }

    private static List<String> row(String name, Tally tally) {
        return List.of(
                name,
                Words.tenths(tally.points()),
                Words.tenths(tally.required()),
                Words.chance(tally.probability()),
                tally.upperLimit() == null
                        ? "everything"
                        : "up to " + Words.percent(Math.min(1, tally.upperLimit()), 1000));
    }

    /** 1 - (1 - chance)^k at k times the points: what more of the same mix would show. */
    private static List<Drawing.Point> curve(WeightedPoints result) {
        if (result.points() == 0) {
            return List.of(new Drawing.Point(0, 0), new Drawing.Point(result.required(), 0));
        }
        double most = 1.4 * Math.max(result.points(), result.required());
        return IntStream.rangeClosed(0, POINTS)
                .mapToDouble(i -> most * i / POINTS)
                .mapToObj(points ->
                        new Drawing.Point(points, 1 - Math.pow(1 - result.probability(), points / result.points())))
                .toList();
    }
}
