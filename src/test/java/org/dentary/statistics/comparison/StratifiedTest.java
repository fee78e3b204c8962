package org.dentary.statistics.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Arrays;
import java.util.List;
import org.dentary.statistics.Vectors;
import org.dentary.statistics.comparison.Stratified.Stratum;
import org.junit.jupiter.api.Test;

public class StratifiedTest {

    @Test
    void agreesWithR() {
        for (NamedCsvRecord row : Vectors.read("stratified.csv")) {
            Stratified result = Stratified.of(strata(Vectors.matrix(row, "strata")), Vectors.number(row, "confidence"));
            Vectors.same(row, "crude", result.crudeOddsRatio(), Vectors.CLOSED);
            Vectors.same(row, "oddsRatio", result.oddsRatio().estimate(), Vectors.CLOSED);
            Vectors.same(row, "oddsRatioLower", result.oddsRatio().lower(), Vectors.CLOSED);
            Vectors.same(row, "oddsRatioUpper", result.oddsRatio().upper(), Vectors.CLOSED);
            Vectors.same(row, "oddsRatioErrorLog", result.standardErrorLog(), Vectors.CLOSED);
            Vectors.same(row, "cmh", result.cochranMantelHaenszel().statistic(), Vectors.CLOSED);
            Vectors.same(row, "cmhP", result.cochranMantelHaenszel().p(), Vectors.CLOSED);
            Vectors.same(row, "riskRatio", result.riskRatio().estimate(), Vectors.CLOSED);
            Vectors.same(row, "riskRatioLower", result.riskRatio().lower(), Vectors.CLOSED);
            Vectors.same(row, "riskRatioUpper", result.riskRatio().upper(), Vectors.CLOSED);
            Vectors.same(row, "riskDifference", result.riskDifference().estimate(), Vectors.CLOSED);
            Vectors.same(row, "riskDifferenceError", result.riskDifferenceStandardError(), Vectors.CLOSED);
            Vectors.same(row, "bdt", result.breslowDayTarone().statistic(), Vectors.ROOT);
            Vectors.same(row, "bdtP", result.breslowDayTarone().p(), Vectors.ROOT);
            Double degrees = Vectors.number(row, "bdtDf");
            assertEquals(
                    degrees == null ? null : degrees.intValue(),
                    result.breslowDayTarone().degreesOfFreedom(),
                    row::toString);
        }
    }

    public static List<Stratum> strata(double[]... rows) {
        return Arrays.stream(rows)
                .map(r -> new Stratum("", (int) r[0], (int) r[1], (int) r[2], (int) r[3]))
                .toList();
    }

    /** Le 2003, Introductory Biostatistics, Example 1.19 (1.53); error and limits R 4.2.2: mantelhaen.test(correct = FALSE). */
    @Test
    void reproducesContraceptivesAndInfarctionBySmoking() {
        Stratified result = Stratified.of(strata(new double[] {4, 34, 52, 754}, new double[] {25, 171, 83, 853}), 0.95);
        assertEquals(1.53, result.oddsRatio().estimate(), 0.005);
        assertEquals(0.2225, result.standardErrorLog(), 0.00005);
        assertEquals(0.990, result.oddsRatio().lower(), 0.0005);
        assertEquals(2.369, result.oddsRatio().upper(), 0.0005);
    }

    /** R 4.2.2: datasets::UCBAdmissions, men against women; mantelhaen.test(correct = FALSE). */
    @Test
    void berkeleyAdmissionsTurnAround() {
        Stratified result = Stratified.of(
                strata(
                        new double[] {512, 313, 89, 19}, new double[] {353, 207, 17, 8},
                        new double[] {120, 205, 202, 391}, new double[] {138, 279, 131, 244},
                        new double[] {53, 138, 94, 299}, new double[] {22, 351, 24, 317}),
                0.95);
        assertEquals(1.841, result.crudeOddsRatio(), 0.0005);
        assertEquals(0.9047, result.oddsRatio().estimate(), 0.00005);
        assertEquals(0.7719, result.oddsRatio().lower(), 0.00005);
        assertEquals(1.0603, result.oddsRatio().upper(), 0.00005);
        assertEquals(1.5246, result.cochranMantelHaenszel().statistic(), 0.00005);
        assertEquals(18.83, result.breslowDayTarone().statistic(), 0.005);
        assertEquals(5, result.breslowDayTarone().degreesOfFreedom());
        assertEquals(0.0021, result.breslowDayTarone().p(), 0.00005);
        assertTrue(result.warnings().stream().anyMatch(w -> w.startsWith("The strata disagree")));
    }

    /**
     * Trials of BCG vaccine, Colditz and others 1994, JAMA 271:698-702, pooled by Mantel-Haenszel in Viechtbauer 2010, J Stat Softw 36(3):
     * odds ratio .6229 (.5748 to .6750), risk ratio .6353 (.5881 to .6862), Tarone 171.76 on 12 (figures from memory).
     */
    @Test
    void reproducesTheVaccineTrials() {
        double[][] trials = {
            {4, 119, 11, 128},
            {6, 300, 29, 274},
            {3, 228, 11, 209},
            {62, 13536, 248, 12619},
            {33, 5036, 47, 5761},
            {180, 1361, 372, 1079},
            {8, 2537, 10, 619},
            {505, 87886, 499, 87892},
            {29, 7470, 45, 7232},
            {17, 1699, 65, 1600},
            {186, 50448, 141, 27197},
            {5, 2493, 3, 2338},
            {27, 16886, 29, 17825}
        };
        Stratified result = Stratified.of(strata(trials), 0.95);
        assertEquals(0.6229, result.oddsRatio().estimate(), 0.00005);
        assertEquals(0.5748, result.oddsRatio().lower(), 0.00005);
        assertEquals(0.6750, result.oddsRatio().upper(), 0.00005);
        assertEquals(0.6353, result.riskRatio().estimate(), 0.00005);
        assertEquals(0.5881, result.riskRatio().lower(), 0.00005);
        assertEquals(0.6862, result.riskRatio().upper(), 0.00005);
        assertEquals(171.76, result.breslowDayTarone().statistic(), 0.005);
    }

    @Test
    void oneStratumCannotDisagreeWithItself() {
        TestStatistic test =
                Stratified.of(strata(new double[] {2, 5, 3, 7}), 0.95).breslowDayTarone();
        assertNull(test.p());
        assertEquals(List.of("Undefined: fewer than two informative strata."), test.warnings());
    }

    @Test
    void saysWhichStrataAreSilent() {
        List<String> warnings = Stratified.of(
                        strata(
                                new double[] {2, 5, 3, 7},
                                new double[] {0, 4, 0, 6},
                                new double[] {0, 0, 0, 0},
                                new double[] {4, 6, 1, 9}),
                        0.95)
                .warnings();
        assertEquals("1 of 4 strata are empty and are dropped.", warnings.get(0));
        assertTrue(warnings.get(1).startsWith("1 of 3 strata have an empty margin"));
    }

    @Test
    void emptyStrataAloneLeaveEverythingUndefined() {
        Stratified result = Stratified.of(strata(new double[] {0, 0, 0, 0}), 0.95);
        assertNull(result.crudeOddsRatio());
        assertNull(result.oddsRatio().estimate());
        assertNull(result.riskRatio().estimate());
        assertNull(result.riskDifference().estimate());
        assertNull(result.cochranMantelHaenszel().p());
        assertNull(result.breslowDayTarone().p());
    }
}
