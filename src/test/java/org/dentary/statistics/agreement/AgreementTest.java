package org.dentary.statistics.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Arrays;
import java.util.List;
import org.dentary.statistics.Vectors;
import org.junit.jupiter.api.Test;

public class AgreementTest {

    @Test
    void agreesWithR() {
        for (NamedCsvRecord row : Vectors.read("agreement.csv")) {
            Agreement result = Agreement.of(counts(Vectors.matrix(row, "counts")), Vectors.number(row, "confidence"));
            Vectors.same(row, "exact", result.exact(), Vectors.CLOSED);
            Vectors.same(row, "withinOne", result.withinOne(), Vectors.CLOSED);
            Vectors.same(row, "bias", result.bias(), Vectors.CLOSED);
            same(row, "kappa", result.kappa());
            same(row, "linear", result.linear());
            same(row, "quadratic", result.quadratic());
            Vectors.same(row, "prevalenceAdjusted", result.prevalenceAdjusted(), Vectors.CLOSED);
            Vectors.same(row, "ac1", result.ac1(), Vectors.CLOSED);
            Vectors.same(row, "kappaMax", result.kappaMax(), Vectors.CLOSED);
        }
    }

    private static void same(NamedCsvRecord row, String name, Kappa actual) {
        Vectors.same(row, name, actual.estimate(), Vectors.CLOSED);
        Vectors.same(row, name + "Error", actual.standardError(), Vectors.CLOSED);
        Vectors.same(row, name + "Null", actual.nullStandardError(), Vectors.CLOSED);
        Vectors.same(row, name + "Lower", actual.lower(), Vectors.CLOSED);
        Vectors.same(row, name + "Upper", actual.upper(), Vectors.CLOSED);
    }

    public static List<List<Integer>> counts(double[]... rows) {
        return Arrays.stream(rows)
                .map(r -> Arrays.stream(r).mapToObj(v -> (int) v).toList())
                .toList();
    }

    private static final List<List<Integer>> COHEN =
            counts(new double[] {88, 14, 18}, new double[] {10, 40, 10}, new double[] {2, 6, 12});

    /** Cohen 1968, Psychol Bull 70:213-220, Table 1 (kappa .492); errors R 4.2.2: agreement.R. */
    @Test
    void reproducesCohensTable() {
        Kappa kappa = Agreement.of(COHEN, 0.95).kappa();
        assertEquals(0.492, kappa.estimate(), 0.0005);
        assertEquals(0.0510, kappa.standardError(), 0.00005);
        assertEquals(0.0520, kappa.nullStandardError(), 0.00005);
    }

    /** The same table with Cohen's own disagreement weights 0, 1, 3, 6: weighted kappa .348. */
    @Test
    void reproducesCohensWeightedKappa() {
        double[][] disagreement = {{0, 1, 3}, {1, 0, 6}, {3, 6, 0}};
        Kappa kappa = Kappa.of(Readings.of(COHEN), (i, j) -> 1 - disagreement[i][j] / 6, 0.95);
        assertEquals(0.348, kappa.estimate(), 0.0005);
        assertEquals(0.0755, kappa.standardError(), 0.00005);
    }

    /** Fleiss 1981, Statistical Methods for Rates and Proportions, Table 13.1 (from memory): .68, .088 and .076. */
    @Test
    void reproducesFleissTable() {
        Kappa kappa = Agreement.of(
                        counts(new double[] {75, 1, 4}, new double[] {5, 4, 1}, new double[] {0, 0, 10}), 0.95)
                .kappa();
        assertEquals(0.68, kappa.estimate(), 0.005);
        assertEquals(0.088, kappa.standardError(), 0.0005);
        assertEquals(0.076, kappa.nullStandardError(), 0.0005);
    }

    /** Agresti, Categorical Data Analysis, section 10.5, two pathologists (from memory): .493, .057; weighted ones R 4.2.2: agreement.R. */
    @Test
    void reproducesThePathologists() {
        Agreement result = Agreement.of(
                counts(
                        new double[] {22, 2, 2, 0},
                        new double[] {5, 7, 14, 0},
                        new double[] {0, 2, 36, 0},
                        new double[] {0, 1, 17, 10}),
                0.95);
        assertEquals(118, result.animals());
        assertEquals(0.493, result.kappa().estimate(), 0.0005);
        assertEquals(0.057, result.kappa().standardError(), 0.0005);
        assertEquals(0.649, result.linear().estimate(), 0.0005);
        assertEquals(0.784, result.quadratic().estimate(), 0.0005);
    }

    @Test
    void oneClassOnlyLeavesKappaUndefinedAndTheRestStanding() {
        Agreement result = Agreement.of(counts(new double[] {20, 0}, new double[] {0, 0}), 0.95);
        assertNull(result.kappa().estimate());
        assertTrue(result.warnings().get(0).startsWith("Kappa undefined"));
        assertEquals(1, result.exact());
        assertEquals(1, result.prevalenceAdjusted());
        assertEquals(1, result.ac1());
    }

    @Test
    void perfectAgreementHasNoError() {
        Kappa kappa = Agreement.of(counts(new double[] {13, 0}, new double[] {0, 29}), 0.95)
                .kappa();
        assertEquals(1, kappa.estimate(), 1e-15);
        assertEquals(0, kappa.standardError());
    }

    @Test
    void nothingReadIsUndefined() {
        Agreement result = Agreement.of(counts(new double[] {0, 0}, new double[] {0, 0}), 0.95);
        assertNull(result.exact());
        assertNull(result.kappa().estimate());
        assertEquals(List.of("No animal was read by both."), result.warnings());
    }

    @Test
    void biasIsTheSecondReaderLessTheFirst() {
        assertEquals(
                1,
                Agreement.of(counts(new double[] {0, 7}, new double[] {0, 0}), 0.95)
                        .bias());
    }
}
