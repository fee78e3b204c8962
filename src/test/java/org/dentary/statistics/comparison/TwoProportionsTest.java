package org.dentary.statistics.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import org.dentary.statistics.Vectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TwoProportionsTest {

    @Test
    void agreesWithR() {
        for (NamedCsvRecord row : Vectors.read("two-proportions.csv")) {
            TwoProportions result = TwoProportions.of(
                    Vectors.integer(row, "detected1"),
                    Vectors.integer(row, "tested1"),
                    Vectors.integer(row, "detected2"),
                    Vectors.integer(row, "tested2"),
                    Vectors.number(row, "confidence"));
            same(row, "difference", result.difference(), Vectors.CLOSED);
            same(row, "riskRatio", result.riskRatio(), Vectors.CLOSED);
            same(row, "haldane", result.oddsRatio().haldaneAnscombe(), Vectors.CLOSED);
            same(row, "conditional", result.oddsRatio().conditional(), Vectors.ROOT);
            Vectors.same(row, "oddsRatio", result.oddsRatio().estimate(), Vectors.CLOSED);
            Vectors.same(row, "woolfLower", result.oddsRatio().woolf().lower(), Vectors.CLOSED);
            Vectors.same(row, "woolfUpper", result.oddsRatio().woolf().upper(), Vectors.CLOSED);
            Vectors.same(row, "twoSided", result.fisher().twoSided(), Vectors.CLOSED);
            Vectors.same(row, "less", result.fisher().less(), Vectors.CLOSED);
            Vectors.same(row, "greater", result.fisher().greater(), Vectors.CLOSED);
            Vectors.same(row, "midP", result.fisher().midP(), Vectors.CLOSED);
            Vectors.same(row, "chiSquare", result.chiSquare().statistic(), Vectors.CLOSED);
            Vectors.same(row, "chiSquareP", result.chiSquare().p(), Vectors.CLOSED);
            Vectors.same(row, "chiSquareN1", result.chiSquareN1().statistic(), Vectors.CLOSED);
            Vectors.same(row, "chiSquareN1P", result.chiSquareN1().p(), Vectors.CLOSED);
        }
    }

    private static void same(NamedCsvRecord row, String prefix, Estimate actual, double relative) {
        Vectors.same(row, prefix, actual.estimate(), relative);
        Vectors.same(row, prefix + "Lower", actual.lower(), relative);
        Vectors.same(row, prefix + "Upper", actual.upper(), relative);
    }

    /** Newcombe 1998, Stat Med 17:873-890, Table II, method 10 (from memory of the table). */
    @ParameterizedTest
    @CsvSource({
        "56, 70, 48, 80, .2000, .0524, .3339",
        "9, 10, 3, 10, .6000, .1705, .8090",
        "6, 7, 2, 7, .5714, .0582, .8062",
        "5, 56, 0, 29, .0893, -.0381, .1926",
        "0, 10, 0, 20, 0, -.1611, .2775",
        "0, 10, 0, 10, 0, -.2775, .2775",
        "10, 10, 0, 20, 1, .6791, 1",
        "10, 10, 0, 10, 1, .6075, 1",
    })
    void reproducesNewcombesDifferences(int a, int n1, int c, int n2, double difference, double lower, double upper) {
        Estimate result = TwoProportions.of(a, n1, c, n2, 0.95).difference();
        assertEquals(difference, result.estimate(), 0.00005);
        assertEquals(lower, result.lower(), 0.00005);
        assertEquals(upper, result.upper(), 0.00005);
    }

    /** Fisher 1935, The Design of Experiments, the tea tasting; R 4.2.2: fisher.test(TeaTasting), limits solved to full precision. */
    @Test
    void reproducesTheTeaTasting() {
        TwoProportions tea = TwoProportions.of(3, 4, 1, 4, 0.95);
        assertEquals(34.0 / 70, tea.fisher().twoSided(), 1e-12);
        assertEquals(17.0 / 70, tea.fisher().greater(), 1e-12);
        assertEquals(34.0 / 70 - 8.0 / 70, tea.fisher().midP(), 1e-12);
        assertEquals(6.4083, tea.oddsRatio().conditional().estimate(), 0.00005);
        assertEquals(0.2117, tea.oddsRatio().conditional().lower(), 0.00005);
        assertEquals(626.24, tea.oddsRatio().conditional().upper(), 0.005);
        assertEquals(9, tea.oddsRatio().estimate());
    }

    @Test
    void aZeroCellLeavesExactLimitsAndAnUnboundedRatio() {
        TwoProportions result = TwoProportions.of(5, 56, 0, 29, 0.95);
        assertEquals(Double.POSITIVE_INFINITY, result.oddsRatio().estimate());
        assertNull(result.oddsRatio().woolf().lower());
        assertFalse(result.oddsRatio().woolf().warnings().isEmpty());
        assertEquals(Double.POSITIVE_INFINITY, result.oddsRatio().conditional().upper());
        assertTrue(result.oddsRatio().conditional().lower() > 0);
        assertNull(result.riskRatio().estimate());
        assertEquals(
                "Risk ratio undefined: none detected in the second group.",
                result.riskRatio().warnings().get(0));
    }

    @Test
    void nobodyOrEverybodyDetectedIsNoContrast() {
        for (int detected : new int[] {0, 1}) {
            TwoProportions result = TwoProportions.of(10 * detected, 10, 20 * detected, 20, 0.95);
            assertEquals(1, result.fisher().twoSided());
            assertEquals(0.5, result.fisher().midP());
            assertNull(result.chiSquare().statistic());
            assertNull(result.oddsRatio().estimate());
            assertEquals(0, result.oddsRatio().conditional().lower());
            assertEquals(
                    Double.POSITIVE_INFINITY, result.oddsRatio().conditional().upper());
            assertEquals(
                    "No contrast possible: nobody or everybody was detected.",
                    result.warnings().get(0));
        }
    }

    @Test
    void anEmptyGroupIsNotSampled() {
        TwoProportions result = TwoProportions.of(0, 0, 3, 20, 0.95);
        assertNull(result.difference().estimate());
        assertNull(result.riskRatio().estimate());
        assertNull(result.oddsRatio().estimate());
        assertNull(result.oddsRatio().conditional().lower());
        assertNull(result.oddsRatio().haldaneAnscombe().estimate());
        assertNull(result.fisher().twoSided());
        assertNull(result.chiSquareN1().p());
        assertTrue(result.warnings().get(0).startsWith("Not sampled"));
    }

    @Test
    void bigHerdsStillAnswer() {
        TwoProportions result = TwoProportions.of(40_000, 900_000, 41_000, 950_000, 0.95);
        assertNotNull(result.difference().lower());
        assertTrue(result.oddsRatio().conditional().lower() < result.oddsRatio().estimate());
        TwoProportions huge = TwoProportions.of(400_000, 900_000, 410_000, 950_000, 0.95);
        assertNull(huge.oddsRatio().conditional().estimate());
        assertTrue(huge.oddsRatio().conditional().warnings().get(0).startsWith("Exact limits are not computed"));
    }
}
