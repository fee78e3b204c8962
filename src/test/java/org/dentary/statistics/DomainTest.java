package org.dentary.statistics;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Arrays;
import java.util.List;
import org.dentary.statistics.Smoothing.Unit;
import org.dentary.statistics.TruePrevalence.Validation;
import org.dentary.statistics.agreement.Agreement;
import org.dentary.statistics.agreement.AgreementTest;
import org.dentary.statistics.comparison.Holm;
import org.dentary.statistics.comparison.Stratified;
import org.dentary.statistics.comparison.StratifiedTest;
import org.dentary.statistics.comparison.Trend;
import org.dentary.statistics.comparison.TrendTest;
import org.dentary.statistics.comparison.TwoProportions;
import org.dentary.statistics.detection.Detection;
import org.dentary.statistics.detection.Freedom;
import org.dentary.statistics.detection.Freedom.Period;
import org.dentary.statistics.detection.Herd;
import org.dentary.statistics.detection.NoneDetected;
import org.dentary.statistics.detection.SampleSize;
import org.dentary.statistics.detection.WeightedPoints;
import org.dentary.statistics.detection.WeightedPoints.RiskClass;
import org.dentary.statistics.standardisation.Standardised;
import org.dentary.statistics.standardisation.StandardisedTest;
import org.junit.jupiter.api.Test;

/** Every function over the vectors of what it takes and what it refuses. */
class DomainTest {

    @Test
    void takesWhatItShouldAndNamesWhatItRefuses() {
        List<NamedCsvRecord> rows = Vectors.readAny("domain.csv");
        assertAll(rows.stream().map(row -> () -> check(row)));
        long refused = rows.stream()
                .filter(row -> !row.getField("expectError").isEmpty())
                .count();
        assertTrue(2 * refused >= rows.size(), "at least half of the vectors are refusals");
    }

    private static void check(NamedCsvRecord row) {
        String expected = row.getField("expectError");
        Runnable call = () -> call(row.getField("function"), row.getField("arguments"));
        if (expected.isEmpty()) {
            assertDoesNotThrow(call::run, row::toString);
            return;
        }
        OutOfDomain refusal = assertThrows(OutOfDomain.class, call::run, row::toString);
        assertEquals(expected, refusal.field(), row::toString);
        assertFalse(refusal.reason().isBlank());
        assertTrue(refusal.getMessage().contains(refusal.given()));
    }

    private static void call(String function, String arguments) {
        double[][] m = Arrays.stream(arguments.split(";"))
                .map(row -> Arrays.stream(row.split(" "))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
        double[] a = m[0];
        switch (function) {
            case "proportion" ->
                Arrays.stream(IntervalMethod.values())
                        .forEach(method -> Proportion.of((int) a[0], (int) a[1], method, a[2]));
            case "two-proportions" -> TwoProportions.of((int) a[0], (int) a[1], (int) a[2], (int) a[3], a[4]);
            case "holm" -> Holm.adjust(Arrays.stream(a).boxed().toList());
            case "stratified" -> Stratified.of(StratifiedTest.strata(m), 0.95);
            case "trend" -> Trend.of(TrendTest.groups(m));
            case "true-prevalence" -> TruePrevalence.known((int) a[0], (int) a[1], a[2], a[3], a[4]);
            case "validation" ->
                TruePrevalence.estimated(
                        (int) a[0], (int) a[1], new Validation((int) a[2], (int) a[3], (int) a[4], (int) a[5]), a[6]);
            case "standardised" -> Standardised.of(StandardisedTest.strata(m), 0.95);
            case "sample-size" -> SampleSize.of(new Herd((int) a[0], (int) a[1]), a[2], a[3]);
            case "design-prevalence" -> SampleSize.of((int) a[0], a[1], a[2], a[3]);
            case "detection" -> Detection.of(new Herd((int) a[0], (int) a[1]), (int) a[2], a[3], a[4]);
            case "none-detected" -> NoneDetected.of((int) a[0], a[1]);
            case "freedom" -> Freedom.of(a[0], a[1], periods(m));
            case "weighted-points" -> WeightedPoints.of(a[0], a[1], a[2], classes(m));
            case "agreement" -> Agreement.of(AgreementTest.counts(m), 0.95);
            case "smoothing" ->
                Smoothing.of(
                        Arrays.stream(m)
                                .map(r -> new Unit("", (int) r[0], (int) r[1]))
                                .toList(),
                        0.95);
            case "reliability" -> Reliability.of((int) a[0], (int) a[1]);
            default -> throw new AssertionError(function);
        }
    }

    /** The first row is prior, introduction and the first sensitivity; every other one a sensitivity. */
    private static List<Period> periods(double[][] rows) {
        return Arrays.stream(rows).map(r -> new Period(r[r.length - 1], false)).toList();
    }

    /** Tested, relative risk and perhaps a share; the first row follows design prevalence, sensitivity and confidence. */
    private static List<RiskClass> classes(double[][] rows) {
        return Arrays.stream(rows)
                .map(r -> r == rows[0] ? Arrays.copyOfRange(r, 3, r.length) : r)
                .map(r -> new RiskClass("", (int) r[0], r[1], r.length > 2 ? r[2] : null))
                .toList();
    }

    @Test
    void emptyListsAreRefused() {
        assertAll(
                () -> assertEquals("groups", refusal(() -> Trend.of(List.of())).field()),
                () -> assertEquals(
                        "strata", refusal(() -> Stratified.of(List.of(), 0.95)).field()),
                () -> assertEquals(
                        "strata", refusal(() -> Standardised.of(null, 0.95)).field()),
                () -> assertEquals(
                        "units", refusal(() -> Smoothing.of(List.of(), 0.95)).field()),
                () -> assertEquals(
                        "counts", refusal(() -> Agreement.of(List.of(), 0.95)).field()),
                () -> assertEquals(
                        "periods", refusal(() -> Freedom.of(0.5, 0, List.of())).field()),
                () -> assertEquals(
                        "classes",
                        refusal(() -> WeightedPoints.of(0.01, 1, 0.95, List.of()))
                                .field()));
    }

    private static OutOfDomain refusal(Runnable call) {
        return assertThrows(OutOfDomain.class, call::run);
    }
}
