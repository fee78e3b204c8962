package org.dentary.statistics.standardisation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Arrays;
import java.util.List;
import org.dentary.statistics.Vectors;
import org.dentary.statistics.standardisation.Standardised.Stratum;
import org.junit.jupiter.api.Test;

public class StandardisedTest {

    @Test
    void agreesWithR() {
        for (NamedCsvRecord row : Vectors.read("standardised.csv")) {
            Standardised result =
                    Standardised.of(strata(Vectors.matrix(row, "strata")), Vectors.number(row, "confidence"));
            Vectors.same(row, "estimate", result.estimate(), Vectors.CLOSED);
            Vectors.same(row, "lower", result.lower(), Vectors.CLOSED);
            Vectors.same(row, "upper", result.upper(), Vectors.CLOSED);
            Vectors.same(row, "crude", result.crude(), Vectors.CLOSED);
            Vectors.same(row, "effectiveN", result.effectiveN(), Vectors.CLOSED);
            Vectors.same(row, "gammaLower", result.gamma().lower(), Vectors.CLOSED);
            Vectors.same(row, "gammaUpper", result.gamma().upper(), Vectors.CLOSED);
            Vectors.same(row, "gammaLower", result.tiwari().lower(), Vectors.CLOSED);
            Vectors.same(row, "tiwariUpper", result.tiwari().upper(), Vectors.CLOSED);
            Vectors.same(row, "wilsonLower", result.stratifiedWilson().lower(), Vectors.CLOSED);
            Vectors.same(row, "wilsonUpper", result.stratifiedWilson().upper(), Vectors.CLOSED);
        }
    }

    public static List<Stratum> strata(double[]... rows) {
        return Arrays.stream(rows)
                .map(r -> new Stratum("", (int) r[0], (int) r[1], r[2]))
                .toList();
    }

    /**
     * Stark & Mantell 1966, birth order 5 and more, as in Fay & Feuer 1997, Stat Med 16:791-801, Table II: 75.52901 per 100,000, gamma
     * limits 67.70212 and 188.30017. Tiwari's upper limit 112.858: R 4.2.2, standardised.R.
     */
    @Test
    void reproducesDownSyndromeInMichigan() {
        Standardised result = Standardised.of(
                strata(
                        new double[] {0, 327, 319933},
                        new double[] {8, 30666, 931318},
                        new double[] {63, 123419, 786511},
                        new double[] {112, 149919, 488235},
                        new double[] {262, 104088, 237863},
                        new double[] {295, 34392, 61313}),
                0.95);
        assertEquals(75.52901, 1e5 * result.estimate(), 0.000005);
        assertEquals(67.70212, 1e5 * result.gamma().lower(), 0.000005);
        assertEquals(188.30017, 1e5 * result.gamma().upper(), 0.000005);
        assertEquals(112.858, 1e5 * result.tiwari().upper(), 0.0005);
    }

    @Test
    void weightsAreOnlyDividedByTheirSum() {
        Standardised shares = Standardised.of(strata(new double[] {3, 40, 0.25}, new double[] {9, 60, 0.75}), 0.95);
        Standardised animals = Standardised.of(strata(new double[] {3, 40, 250}, new double[] {9, 60, 750}), 0.95);
        assertEquals(shares.estimate(), animals.estimate(), 1e-15);
        assertEquals(shares.upper(), animals.upper(), 1e-15);
        assertEquals(0.25 * 3 / 40 + 0.75 * 9 / 60, shares.estimate(), 1e-15);
    }

    @Test
    void noneDetectedHasAnUpperLimitAndNoStratifiedWilson() {
        Standardised result = Standardised.of(strata(new double[] {0, 20, 1}, new double[] {0, 30, 2}), 0.95);
        assertEquals(0, result.estimate());
        assertEquals(0, result.lower());
        assertEquals(1 / (1 / 9.0 / 20 + 4 / 9.0 / 30), result.effectiveN(), 1e-9);
        assertEquals(1 - Math.pow(0.025, 1 / result.effectiveN()), result.upper(), 1e-12);
        assertNull(result.stratifiedWilson().lower());
        assertTrue(result.warnings().get(0).startsWith("Stratified Wilson limits undefined"));
    }

    @Test
    void aGammaLimitAboveOneIsGivenAndSaid() {
        Standardised result = Standardised.of(strata(new double[] {3, 3, 1}, new double[] {2, 3, 1}), 0.95);
        assertTrue(result.gamma().upper() > 1);
        assertTrue(result.warnings().stream().anyMatch(w -> w.startsWith("The gamma upper limit exceeds 1")));
    }

    @Test
    void strataWithoutWeightAreDroppedAndCounted() {
        Standardised result = Standardised.of(strata(new double[] {3, 40, 1}, new double[] {9, 60, 0}), 0.95);
        assertEquals(3.0 / 40, result.crude());
        assertEquals(List.of("1 of 2 strata have weight 0 and are dropped."), result.warnings());
    }
}
