package org.dentary.statistics.detection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class DetectionPropertiesTest {

    @Property(tries = 300, seed = "20261126")
    void theSampleSizeIsTheSmallest(
            @ForAll @IntRange(min = 1, max = 600) int population,
            @ForAll @IntRange(min = 1, max = 40) int infected,
            @ForAll @IntRange(min = 30, max = 100) int sensitivityPercent,
            @ForAll @IntRange(min = 50, max = 99) int confidencePercent) {
        Herd herd = new Herd(population, Math.min(population, infected));
        double sensitivity = sensitivityPercent / 100.0;
        double confidence = confidencePercent / 100.0;
        SampleSize result = SampleSize.of(herd, sensitivity, confidence);
        if (result.required() == null) {
            assertTrue(herd.detection(population, sensitivity) < confidence);
            return;
        }
        assertTrue(herd.detection(result.required(), sensitivity) >= confidence - 1e-12);
        assertTrue(herd.detection(result.required() - 1, sensitivity) < confidence);
    }

    @Property(tries = 300, seed = "20261126")
    void chancesAddUpToOne(
            @ForAll @IntRange(min = 1, max = 400) int population,
            @ForAll @IntRange(max = 400) int infected,
            @ForAll @IntRange(max = 400) int tested,
            @ForAll @IntRange(max = 100) int sensitivityPercent,
            @ForAll @IntRange(max = 100) int specificityPercent) {
        Detection result = Detection.of(
                new Herd(population, Math.min(population, infected)),
                Math.min(population, tested),
                sensitivityPercent / 100.0,
                specificityPercent / 100.0);
        assertEquals(
                1, result.byDetected().stream().mapToDouble(Double::doubleValue).sum(), 1e-9);
        assertEquals(1 - result.byDetected().get(0), result.probability(), 1e-9);
    }
}
