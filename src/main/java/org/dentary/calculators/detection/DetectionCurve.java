package org.dentary.calculators.detection;

import java.util.List;
import java.util.stream.IntStream;
import org.dentary.calculators.Drawing;
import org.dentary.statistics.detection.Detection;
import org.dentary.statistics.detection.Herd;

/** The chance of detection against the number tested. */
final class DetectionCurve {
    private static final int POINTS = 120;

    private DetectionCurve() {}

    /** From 0 tested to somewhat beyond {@code interesting}, or to the whole herd where that is less. */
    static Drawing.Curve of(Herd herd, int interesting, double sensitivity) {
        int most = (int) Math.min(herd.population(), Math.max(10, Math.ceil(1.6 * interesting)));
        List<Integer> tested = IntStream.rangeClosed(0, POINTS)
                .map(i -> (int) Math.round((double) most * i / POINTS))
                .distinct()
                .boxed()
                .toList();
        List<Double> chances = Detection.curve(herd, tested, sensitivity);
        return new Drawing.Curve(
                "Chance of detection",
                true,
                false,
                IntStream.range(0, tested.size())
                        .mapToObj(i -> new Drawing.Point(tested.get(i), chances.get(i)))
                        .toList());
    }
}
