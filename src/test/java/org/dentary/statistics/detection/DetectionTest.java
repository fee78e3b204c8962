package org.dentary.statistics.detection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import org.dentary.statistics.Vectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DetectionTest {

    @Test
    void sampleSizeAgreesWithR() {
        for (NamedCsvRecord row : Vectors.read("sample-size.csv")) {
            int population = Vectors.integer(row, "population");
            Double designPrevalence = Vectors.number(row, "designPrevalence");
            double sensitivity = Vectors.number(row, "sensitivity");
            double confidence = Vectors.number(row, "confidence");
            SampleSize result = designPrevalence == null
                    ? SampleSize.of(new Herd(population, Vectors.integer(row, "infected")), sensitivity, confidence)
                    : SampleSize.of(population, designPrevalence, sensitivity, confidence);
            assertEquals(whole(row, "infected"), result.infected(), row::toString);
            assertEquals(whole(row, "required"), result.required(), row::toString);
            assertEquals(whole(row, "cannonRoe"), result.cannonRoe(), row::toString);
            assertEquals(whole(row, "withSensitivity"), result.withSensitivity(), row::toString);
            assertEquals(whole(row, "infinitePopulation"), result.infinitePopulation(), row::toString);
            Vectors.same(row, "achieved", result.achieved(), Vectors.CLOSED);
        }
    }

    private static Integer whole(NamedCsvRecord row, String field) {
        Double number = Vectors.number(row, field);
        return number == null ? null : number.intValue();
    }

    @Test
    void chancesAgreeWithR() {
        for (NamedCsvRecord row : Vectors.read("detection.csv")) {
            Herd herd = new Herd(Vectors.integer(row, "population"), Vectors.integer(row, "infected"));
            Detection result = Detection.of(
                    herd,
                    Vectors.integer(row, "tested"),
                    Vectors.number(row, "sensitivity"),
                    Vectors.number(row, "specificity"));
            Vectors.same(row, "probability", result.probability(), Vectors.CLOSED);
            Vectors.same(row, "probabilityTrue", result.probabilityTrue(), Vectors.CLOSED);
            Vectors.same(row, "probabilityIfAbsent", result.probabilityIfAbsent(), Vectors.CLOSED);
            Vectors.same(row, "macDiarmid", result.macDiarmid(), Vectors.CLOSED);
            Vectors.same(row, "binomial", result.binomial(), Vectors.CLOSED);
            List<Double> expected = Vectors.numbers(row.getField("byDetected"));
            assertEquals(expected.size(), result.byDetected().size(), row::toString);
            for (int t = 0; t < expected.size(); t++) {
                Vectors.same(row::toString, expected.get(t), result.byDetected().get(t), Vectors.CLOSED);
            }
        }
    }

    @Test
    void noneDetectedAgreesWithR() {
        for (NamedCsvRecord row : Vectors.read("none-detected.csv")) {
            NoneDetected result = NoneDetected.of(Vectors.integer(row, "tested"), Vectors.number(row, "confidence"));
            Vectors.same(row, "oneSided", result.oneSided(), Vectors.CLOSED);
            Vectors.same(row, "twoSided", result.twoSided(), Vectors.CLOSED);
        }
        // Hanley & Lippman-Hand 1983, JAMA 249:1743-1745: about 3/n
        assertEquals(0.01, NoneDetected.of(300, 0.95).ruleOfThree());
        assertEquals(0.01, NoneDetected.of(300, 0.95).oneSided(), 0.0001);
        assertNull(NoneDetected.of(0, 0.95).oneSided());
    }

    /** Number to detect in a large herd, the values printed in textbooks (from memory); 95 % and 99 %. */
    @ParameterizedTest
    @CsvSource({
        ".001, 2995, 4603", ".005, 598, 919", ".01, 299, 459", ".02, 149, 228",
        ".05, 59, 90", ".1, 29, 44", ".2, 14, 21", ".5, 5, 7",
    })
    void reproducesTheClassicNumbers(double designPrevalence, int at95, int at99) {
        assertEquals(at95, SampleSize.of(1000, designPrevalence, 1, 0.95).infinitePopulation());
        assertEquals(at99, SampleSize.of(1000, designPrevalence, 1, 0.99).infinitePopulation());
    }

    /** Cannon & Roe 1982, Livestock Disease Surveys, table at 95 % (from memory, agreeing within 1). */
    @ParameterizedTest
    @CsvSource({
        "20, 5, 10, 16, 19, 19, 19, 19", "50, 5, 12, 22, 35, 48, 48, 48", "100, 5, 13, 25, 45, 78, 95, 95",
        "500, 5, 14, 28, 56, 129, 225, 349", "1000, 5, 14, 29, 57, 138, 258, 450",
                "10000, 5, 14, 29, 59, 148, 294, 581",
    })
    void reproducesCannonAndRoesTable(int herd, int at50, int at20, int at10, int at5, int at2, int at1, int atHalf) {
        double[] prevalences = {0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005};
        int[] printed = {at50, at20, at10, at5, at2, at1, atHalf};
        for (int i = 0; i < prevalences.length; i++) {
            assertEquals(
                    printed[i], SampleSize.of(herd, prevalences[i], 1, 0.95).cannonRoe());
        }
    }

    /** R 4.2.2: detection.R; 2.5 infected deer do not exist, 2 need 39 and 3 need 31, where the approximation prints 35. */
    @Test
    void aFractionOfADeerIsRoundedDownAndSaid() {
        SampleSize result = SampleSize.of(50, 0.05, 1, 0.95);
        assertEquals(2, result.infected());
        assertEquals(39, result.required());
        assertEquals(35, result.cannonRoe());
        assertEquals(
                List.of(
                        "The design prevalence means 2.50 infected; the exact answer takes 2, the approximations the fraction."),
                result.warnings());
        assertEquals(31, SampleSize.of(new Herd(50, 3), 1, 0.95).required());
        assertEquals(29, Herd.atDesignPrevalence(100, 0.29).infected());
    }

    /** R 4.2.2: dhyper, detection.R. */
    @Test
    void theExactAnswerForAHundredDeer() {
        SampleSize result = SampleSize.of(100, 0.05, 1, 0.95);
        assertEquals(45, result.required());
        assertEquals(0.9538, result.achieved(), 0.00005);
        assertEquals(0.9493, new Herd(100, 5).detection(44, 1), 0.00005);
    }

    @Test
    void unattainableIsSaidNotRoundedToACensus() {
        SampleSize result = SampleSize.of(new Herd(40, 1), 0.7, 0.95);
        assertNull(result.required());
        assertEquals(0.7, result.achieved(), 1e-12);
        assertEquals(
                "Unattainable: a census of this herd with this test cannot reach 95 %; it reaches 70.0 %.",
                result.warnings().get(0));
    }

    @Test
    void nothingTestedOrNobodyInfectedDetectsNothing() {
        assertEquals(0, Detection.of(new Herd(50, 0), 20, 0.9, 1).probability());
        Detection none = Detection.of(new Herd(50, 50), 0, 1, 1);
        assertEquals(0, none.probability());
        assertEquals(List.of(1.0), none.byDetected());
        assertEquals(0, Detection.of(new Herd(5, 0), 5, 1, 1).macDiarmid());
    }

    @Test
    void aPerfectTestOnEverybodyAlwaysDetects() {
        Detection result = Detection.of(new Herd(30, 2), 30, 1, 1);
        assertEquals(1, result.probability(), 1e-12);
        assertEquals(1, result.byDetected().get(2), 1e-12);
    }

    @Test
    void bigHerdsStillAnswer() {
        SampleSize result = SampleSize.of(2_000_000, 0.01, 1, 0.95);
        assertEquals(299, result.required());
        Detection detection = Detection.of(new Herd(10_000_000, 5_000_000), 5_000_000, 0.5, 0.999);
        assertEquals(1, detection.probability(), 1e-12);
        assertEquals(Detection.LISTED + 1, detection.byDetected().size());
    }
}
