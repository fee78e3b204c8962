package org.dentary.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Arrays;
import java.util.List;
import org.dentary.statistics.Smoothing.Unit;
import org.junit.jupiter.api.Test;

class SmoothingTest {

    @Test
    void agreesWithR() {
        for (NamedCsvRecord row : Vectors.read("smoothing.csv")) {
            Smoothing result = Smoothing.of(units(Vectors.matrix(row, "units")), Vectors.number(row, "confidence"));
            Vectors.same(row, "pooled", result.pooled(), Vectors.CLOSED);
            same(
                    row,
                    "smoothed",
                    result.units().stream().map(Smoothing.Smoothed::smoothed).toList(),
                    result);
            if (result.priorSize() == null || result.priorSize() > 0) {
                Vectors.same(row, "priorSize", result.priorSize(), Vectors.ROOT);
                same(
                        row,
                        "lower",
                        result.units().stream().map(Smoothing.Smoothed::lower).toList(),
                        result);
                same(
                        row,
                        "upper",
                        result.units().stream().map(Smoothing.Smoothed::upper).toList(),
                        result);
            }
        }
    }

    private static void same(NamedCsvRecord row, String field, List<Double> actual, Smoothing result) {
        List<Double> expected = Vectors.numbers(row.getField(field));
        for (int i = 0; i < expected.size(); i++) {
            Vectors.same(() -> row + " " + result, expected.get(i), actual.get(i), Vectors.ROOT);
        }
    }

    private static List<Unit> units(double[]... rows) {
        return Arrays.stream(rows)
                .map(r -> new Unit("", (int) r[0], (int) r[1]))
                .toList();
    }

    @Test
    void noSpreadBeyondChanceGivesEverybodyTheCommonProportion() {
        Smoothing result = Smoothing.of(units(new double[] {2, 20}, new double[] {2, 20}, new double[] {0, 0}), 0.95);
        assertNull(result.priorSize());
        assertEquals(0.1, result.units().get(0).smoothed());
        assertNull(result.units().get(0).lower());
        assertEquals(0.1, result.units().get(2).smoothed());
        assertEquals(
                List.of("No data: the common proportion."),
                result.units().get(2).warnings());
        assertTrue(result.warnings().get(0).startsWith("No spread between units"));
    }

    @Test
    void aFirstDetectionStaysVisibleBesideItsSmoothedValue() {
        Smoothing result = Smoothing.of(
                units(new double[] {1, 4}, new double[] {0, 60}, new double[] {0, 80}, new double[] {9, 50}), 0.95);
        assertEquals(0.25, result.units().get(0).raw());
        assertTrue(result.units().get(0).smoothed() < 0.25);
    }

    @Test
    void unitsThatShareNothingKeepTheirOwn() {
        Smoothing result = Smoothing.of(units(new double[] {10, 10}, new double[] {0, 10}, new double[] {0, 0}), 0.95);
        assertEquals(0, result.priorSize());
        assertEquals(1, result.units().get(0).smoothed());
        assertNull(result.units().get(0).lower());
        assertEquals(0.5, result.units().get(2).smoothed());
    }

    @Test
    void nothingTestedAnywhereIsUndefined() {
        Smoothing result = Smoothing.of(units(new double[] {0, 0}), 0.95);
        assertNull(result.pooled());
        assertNull(result.units().get(0).smoothed());
        assertFalse(result.warnings().isEmpty());
    }

    /** R 4.2.2: see reliability.R. */
    @Test
    void reliabilityAgreesWithR() {
        for (NamedCsvRecord row : Vectors.read("reliability.csv")) {
            Reliability result = Reliability.of(Vectors.integer(row, "detected"), Vectors.integer(row, "tested"));
            Vectors.same(row, "absoluteWidth", result.absoluteWidth(), Vectors.CLOSED);
            Vectors.same(row, "relativeWidth", result.relativeWidth(), Vectors.CLOSED);
            assertEquals(row.getField("flag"), result.flag().name(), row::toString);
            assertEquals(
                    result.flag() == Reliability.Flag.RELIABLE, result.reasons().isEmpty());
        }
        assertEquals(Reliability.Flag.UNRELIABLE, Reliability.of(0, 0).flag());
    }
}
