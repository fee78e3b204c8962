package org.dentary.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import org.dentary.statistics.TruePrevalence.Validation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TruePrevalenceTest {

    @Test
    void knownErrorsAgreeWithR() {
        for (NamedCsvRecord row : Vectors.read("true-prevalence-known.csv")) {
            TruePrevalence result = TruePrevalence.known(
                    Vectors.integer(row, "detected"),
                    Vectors.integer(row, "tested"),
                    Vectors.number(row, "sensitivity"),
                    Vectors.number(row, "specificity"),
                    Vectors.number(row, "confidence"));
            same(row, result, Vectors.ROOT);
        }
    }

    @Test
    void estimatedErrorsAgreeWithR() {
        for (NamedCsvRecord row : Vectors.read("true-prevalence-estimated.csv")) {
            TruePrevalence result = TruePrevalence.estimated(
                    Vectors.integer(row, "detected"),
                    Vectors.integer(row, "tested"),
                    new Validation(
                            Vectors.integer(row, "truePositives"),
                            Vectors.integer(row, "infected"),
                            Vectors.integer(row, "trueNegatives"),
                            Vectors.integer(row, "uninfected")),
                    Vectors.number(row, "confidence"));
            same(row, result, Vectors.CLOSED);
        }
    }

    private static void same(NamedCsvRecord row, TruePrevalence result, double limits) {
        Vectors.same(row, "raw", result.raw(), Vectors.CLOSED);
        Vectors.same(row, "estimate", result.estimate(), Vectors.CLOSED);
        Vectors.same(row, "standardError", result.standardError(), Vectors.CLOSED);
        Vectors.same(row, "lower", result.lower(), limits);
        Vectors.same(row, "upper", result.upper(), limits);
        assertEquals(result.raw() < 0 || result.raw() > 1, result.truncated());
    }

    /** Reiczigel, Foldi & Ozsvari 2010, Epidemiol Infect 138:1674-1678, brucellosis: 5.1 per 100, 0 to 13. */
    @Test
    void reproducesBrucellosis() {
        TruePrevalence result = TruePrevalence.known(23, 150, 0.96, 0.89, 0.95);
        assertEquals(0.051, result.estimate(), 0.0005);
        assertEquals(0, result.lower());
        assertEquals(0.13, result.upper(), 0.005);
        assertEquals(0.1275, result.upper(), 0.00005); // R 4.2.2: true_prevalence.R
        assertFalse(result.truncated());
    }

    /** The same paper, Helicobacter at age 1 to 4: raw -3.73 per 100, cut to 0. Its interval (0 to 1.3) is Clopper-Pearson's, wider than ours. */
    @Test
    void cutsBelowTheFalsePositiveRateAndSaysSo() {
        TruePrevalence result = TruePrevalence.known(6, 151, 0.964, 0.927, 0.95);
        assertEquals(-0.0373, result.raw(), 0.00005);
        assertEquals(0, result.estimate());
        assertTrue(result.truncated());
        assertTrue(result.upper() <= 0.013);
        assertEquals(
                List.of("Apparent prevalence below the false-positive rate: the estimate is cut to 0."),
                result.warnings());
    }

    /** Data of Reiczigel 2010, Table 2 (sensitivity .5, specificity .995); values R 4.2.2: true_prevalence.R (printed table not seen). */
    @ParameterizedTest
    @CsvSource({
        "2, 78, .0417, 0, .1624",
        "4, 130, .0521, .0113, .1398",
        "8, 78, .1971, .0822, .3714",
        "12, 260, .0831, .0415, .1500",
        "27, 650, .0738, .0461, .1099",
    })
    void reproducesReiczigelsTable(int detected, int tested, double estimate, double lower, double upper) {
        TruePrevalence result = TruePrevalence.known(detected, tested, 0.5, 0.995, 0.95);
        assertEquals(estimate, result.estimate(), 0.00005);
        assertEquals(lower, result.lower(), 0.00005);
        assertEquals(upper, result.upper(), 0.00005);
    }

    /** R 4.2.2 only: true_prevalence.R. */
    @Test
    void limitsWithEstimatedErrors() {
        TruePrevalence result = TruePrevalence.estimated(12, 200, new Validation(90, 100, 196, 200), 0.95);
        assertEquals(0.04545, result.estimate(), 0.000005);
        assertEquals(0.00325, result.lower(), 0.000005);
        assertEquals(0.09612, result.upper(), 0.000005);
    }

    @Test
    void aPerfectTestLeavesTheApparentPrevalence() {
        TruePrevalence result = TruePrevalence.known(7, 60, 1, 1, 0.95);
        Proportion apparent = Proportion.of(7, 60, IntervalMethod.BLAKER, 0.95);
        assertEquals(apparent.estimate(), result.estimate(), 1e-15);
        assertEquals(apparent.lower(), result.lower(), 1e-15);
        assertEquals(apparent.upper(), result.upper(), 1e-15);
    }

    @Test
    void aboveTheSensitivityIsCutToOneWithAWarning() {
        TruePrevalence result = TruePrevalence.known(40, 40, 0.9, 1, 0.95);
        assertEquals(1, result.estimate());
        assertTrue(result.warnings().get(0).contains("do not fit these data"));
    }

    @Test
    void nothingTestedHasNoEstimate() {
        TruePrevalence result = TruePrevalence.known(0, 0, 0.9, 1, 0.95);
        assertNull(result.apparent());
        assertNull(result.raw());
        assertNull(result.upper());
        assertTrue(result.warnings().get(0).startsWith("Not sampled"));
        assertNull(TruePrevalence.estimated(0, 0, new Validation(9, 10, 9, 10), 0.95)
                .estimate());
    }

    @Test
    void aTinyValidationGivesNoLimits() {
        TruePrevalence result = TruePrevalence.estimated(5, 20, new Validation(1, 1, 1, 100), 0.95);
        assertNull(result.lower());
        assertTrue(result.warnings().get(0).startsWith("No limits"));
    }
}
