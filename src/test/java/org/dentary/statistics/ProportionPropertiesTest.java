package org.dentary.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class ProportionPropertiesTest {

    private static final double ROUNDING = 1e-9;

    @Property(tries = 400, seed = "20261126")
    void limitsBracketTheEstimate(
            @ForAll IntervalMethod method,
            @ForAll @IntRange(max = 400) int detected,
            @ForAll @IntRange(max = 400) int notDetected,
            @ForAll @IntRange(min = 600, max = 999) int thousandths) {
        if (detected + notDetected == 0) {
            return;
        }
        Proportion result = Proportion.of(detected, detected + notDetected, method, thousandths / 1000.0);
        assertTrue(0 <= result.lower() && result.lower() <= result.estimate() + ROUNDING, result::toString);
        assertTrue(result.estimate() <= result.upper() + ROUNDING && result.upper() <= 1, result::toString);
    }

    @Property(tries = 400, seed = "20261126")
    void limitsWidenWithConfidence(
            @ForAll IntervalMethod method,
            @ForAll @IntRange(max = 200) int detected,
            @ForAll @IntRange(min = 1, max = 200) int notDetected,
            @ForAll @IntRange(min = 600, max = 990) int thousandths,
            @ForAll @IntRange(min = 1, max = 9) int more) {
        int tested = detected + notDetected;
        Proportion narrow = Proportion.of(detected, tested, method, thousandths / 1000.0);
        Proportion wide = Proportion.of(detected, tested, method, (thousandths + more) / 1000.0);
        assertTrue(wide.lower() <= narrow.lower() + ROUNDING, () -> narrow + " " + wide);
        assertTrue(wide.upper() >= narrow.upper() - ROUNDING, () -> narrow + " " + wide);
    }

    @Property(tries = 400, seed = "20261126")
    void limitsNarrowAsTheSampleGrowsAtTheSameShare(
            @ForAll IntervalMethod method,
            @ForAll @IntRange(max = 40) int detected,
            @ForAll @IntRange(min = 1, max = 40) int notDetected,
            @ForAll @IntRange(min = 2, max = 10) int times) {
        int tested = detected + notDetected;
        Proportion small = Proportion.of(detected, tested, method, 0.95);
        Proportion large = Proportion.of(times * detected, times * tested, method, 0.95);
        assertTrue(large.upper() - large.lower() < small.upper() - small.lower() + ROUNDING, () -> small + " " + large);
    }

    @Property(tries = 400, seed = "20261126")
    void limitsMirrorWhenDetectedAndNotDetectedChangePlaces(
            @ForAll IntervalMethod method,
            @ForAll @IntRange(max = 300) int detected,
            @ForAll @IntRange(min = 1, max = 300) int notDetected,
            @ForAll @IntRange(min = 600, max = 999) int thousandths) {
        int tested = detected + notDetected;
        Proportion one = Proportion.of(detected, tested, method, thousandths / 1000.0);
        Proportion other = Proportion.of(notDetected, tested, method, thousandths / 1000.0);
        assertEquals(1 - one.upper(), other.lower(), ROUNDING);
        assertEquals(1 - one.lower(), other.upper(), ROUNDING);
    }

    @Property(tries = 200, seed = "20261126")
    void blakerLiesWithinClopperPearson(
            @ForAll @IntRange(max = 300) int detected,
            @ForAll @IntRange(min = 1, max = 300) int notDetected,
            @ForAll @IntRange(min = 600, max = 999) int thousandths) {
        int tested = detected + notDetected;
        Proportion inner = Proportion.of(detected, tested, IntervalMethod.BLAKER, thousandths / 1000.0);
        Proportion outer = Proportion.of(detected, tested, IntervalMethod.CLOPPER_PEARSON, thousandths / 1000.0);
        assertTrue(outer.lower() <= inner.lower() + ROUNDING && inner.upper() <= outer.upper() + ROUNDING);
    }
}
