package org.dentary.calculators.proportion;

import jakarta.inject.Singleton;
import java.util.List;
import java.util.stream.IntStream;
import org.dentary.calculators.Answer;
import org.dentary.calculators.Answer.Figures;
import org.dentary.calculators.Asked;
import org.dentary.calculators.Calculator;
import org.dentary.calculators.Drawing;
import org.dentary.calculators.Field;
import org.dentary.calculators.Words;
import org.dentary.statistics.Smoothing;

/** Small areas, raw beside smoothed. */
@Singleton
class SmoothingCalculator implements Calculator {

    @Override
    public Entry entry() {
        return new Entry(
                Part.HOW_COMMON,
                4,
                "smoothing",
                "Small areas, smoothed",
                "Draw units with few animals towards what all have in common, raw figures beside.",
                "units=North+Fork%2C+1%2C+4%0ATamarack+Flat%2C+9%2C+61%0ALower+Basin%2C+0%2C+38%0AHalf+Moon%2C+2%2C+97%0ACinder+Ridge%2C+14%2C+80%0AOld+Ferry%2C+0%2C+0&confidence=0.95");
    }

    @Override
    public List<Field> fields() {
        return List.of(Field.rows("units", "Units", "One a line: name, detected, tested"), Field.confidence());
    }

    private static Smooth read(Asked asked) {
        List<Smooth.Unit> units = asked.rows("units").stream()
                .map(row -> new Smooth.Unit(row.text(0), row.whole(1, "detected"), row.whole(2, "tested")))
                .toList();
        double confidence = asked.confidence();
        asked.check();
        return new Smooth(confidence, units);
    }

    @Override
    public Answer answer(Asked asked) {
        Smooth read = read(asked);
        Smoothing result = read.compute();
        int tested = read.units().stream().mapToInt(Smooth.Unit::tested).sum();
        List<Drawing.Interval> intervals = result.units().stream()
                .map(u -> new Drawing.Interval(u.label(), u.smoothed(), u.lower(), u.upper(), u.raw()))
                .toList();
        return new Answer(
                "Common prevalence " + Words.percent(result.pooled(), tested) + " of " + Words.animals(tested) + " in "
                        + Words.count(read.units().size()) + " units.",
                result.warnings(),
                new Drawing.Intervals(
                        "Each unit's smoothed prevalence with its interval, the raw one marked beside",
                        "Prevalence",
                        false,
                        intervals),
                List.of(new Figures(
                        "Raw and smoothed prevalence",
                        List.of("Unit", "Detected", "Tested", "Raw", "Smoothed", "Lower", "Upper"),
                        IntStream.range(0, intervals.size())
                                .mapToObj(i ->
                                        row(read.units().get(i), result.units().get(i)))
                                .toList())),
                List.of(
                        "The units could be exchanged for one another: nothing known beforehand sets one apart.",
                        "Where units truly differ, smoothing hides it; a first detection is never to be smoothed away.",
                        "The intervals leave out the uncertainty of the common prevalence: they are too narrow."),
                result.source());
    }

    private static List<String> row(Smooth.Unit given, Smoothing.Smoothed smoothed) {
        return List.of(
                given.label(),
                Words.count(given.detected()),
                Words.count(given.tested()),
                given.tested() == 0 ? "not sampled" : Words.percent(smoothed.raw(), given.tested()),
                Words.percent(smoothed.smoothed(), 30),
                smoothed.lower() == null ? "none" : Words.percent(smoothed.lower(), 30),
                smoothed.upper() == null ? "none" : Words.percent(smoothed.upper(), 30));
    }
}
