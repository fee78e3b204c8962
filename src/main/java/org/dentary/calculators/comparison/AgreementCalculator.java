package org.dentary.calculators.comparison;

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
import org.dentary.statistics.agreement.Agreement;
import org.dentary.statistics.agreement.Kappa;

/** Two readers of the same jaws. */
@Singleton
class AgreementCalculator implements Calculator {

    @Override
    public Entry entry() {
        return new Entry(
                Part.DIFFERENT,
                8,
                "agreement",
                "Two readers",
                "How far two readers of the same jaws agree beyond chance.",
                "counts=31%2C+2%2C+0%0A3%2C+44%2C+6%0A0%2C+5%2C+59&confidence=0.95");
    }

    @Override
    public List<Field> fields() {
        return List.of(
                Field.rows(
                        "counts",
                        "Animals by class",
                        "One line for each class of the first reader, youngest first: how many animals the second reader put in each class, in the same order"),
                Field.confidence());
    }

    private static CompareReaders read(Asked asked) {
        List<List<Integer>> counts = asked.rows("counts").stream()
                .map(row -> IntStream.range(0, row.size())
                        .mapToObj(cell -> row.whole(cell, "class " + (cell + 1)))
                        .toList())
                .toList();
        double confidence = asked.confidence();
        asked.check();
        return new CompareReaders(confidence, counts);
    }

    @Override
    public Answer answer(Asked asked) {
        CompareReaders read = read(asked);
        Agreement result = read.compute();
        int animals = result.animals();
        List<List<String>> rows = new ArrayList<>();
        rows.add(row("Kappa", result.kappa()));
        rows.add(row("Weighted, linear", result.linear()));
        rows.add(row("Weighted, quadratic", result.quadratic()));
        rows.add(List.of("Prevalence-adjusted", Words.number(result.prevalenceAdjusted()), "", "", ""));
        rows.add(List.of("AC1", Words.number(result.ac1()), "", "", ""));
        rows.add(List.of("Kappa these margins allow", Words.number(result.kappaMax()), "", "", ""));
        return new Answer(
                animals == 0
                        ? "No animal was read by both."
                        : "Of " + Words.animals(animals) + " the readers gave " + Words.percent(result.exact(), animals)
                                + " the same class and " + Words.percent(result.withinOne(), animals)
                                + " the same or the next; kappa "
                                + Words.number(result.kappa().estimate()) + ".",
                result.warnings(),
                new Drawing.Intervals(
                        "Kappa without weights, with linear and with quadratic weights, each with its interval",
                        "Agreement beyond chance",
                        false,
                        List.of(
                                interval("Kappa", result.kappa()),
                                interval("Linear", result.linear()),
                                interval("Quadratic", result.quadratic()))),
                List.of(
                        new Figures(
                                "Agreement beyond chance at " + Words.level(read.level()),
                                List.of("Measure", "Estimate", "Standard error", "Lower", "Upper"),
                                rows),
                        new Figures(
                                "Agreement as such",
                                List.of("Measure", "Value"),
                                List.of(
                                        List.of("Same class", Words.percent(result.exact(), animals)),
                                        List.of("Same class or the next", Words.percent(result.withinOne(), animals)),
                                        List.of("Second reader older, in classes", Words.number(result.bias()))))),
                List.of(
                        "Each animal was read once by each reader, neither knowing the other's word.",
                        "Classes stand in order and count as equally far apart; age classes are not, so read the shares beside the weighted values.",
                        "Agreement is not accuracy: jaws of known age tell that."),
                result.source());
    }

    private static Drawing.Interval interval(String label, Kappa kappa) {
        return new Drawing.Interval(label, kappa.estimate(), kappa.lower(), kappa.upper());
    }

    private static List<String> row(String name, Kappa kappa) {
        return List.of(
                name,
                Words.number(kappa.estimate()),
                Words.number(kappa.standardError()),
                Words.number(kappa.lower()),
                Words.number(kappa.upper()));
    }
}
