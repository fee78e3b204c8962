package org.dentary.statistics.detection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Arrays;
import java.util.List;
import org.dentary.statistics.Vectors;
import org.dentary.statistics.detection.Freedom.Period;
import org.dentary.statistics.detection.WeightedPoints.Convention;
import org.dentary.statistics.detection.WeightedPoints.RiskClass;
import org.junit.jupiter.api.Test;

class FreedomTest {

    @Test
    void agreesWithR() {
        for (NamedCsvRecord row : Vectors.read("freedom.csv")) {
            Freedom result = Freedom.of(
                    Vectors.number(row, "prior"),
                    Vectors.number(row, "introduction"),
                    Vectors.numbers(row.getField("sensitivities")).stream()
                            .map(s -> new Period(s, false))
                            .toList());
            List<Double> before = Vectors.numbers(row.getField("before"));
            List<Double> after = Vectors.numbers(row.getField("after"));
            for (int i = 0; i < before.size(); i++) {
                Vectors.same(
                        row::toString, before.get(i), result.periods().get(i).prior(), Vectors.CLOSED);
                Vectors.same(
                        row::toString, after.get(i), result.periods().get(i).posterior(), Vectors.CLOSED);
            }
            Vectors.same(row, "equilibriumPrior", result.equilibriumPrior(), Vectors.CLOSED);
            Vectors.same(row, "equilibriumPosterior", result.equilibriumPosterior(), Vectors.CLOSED);
        }
    }

    @Test
    void aDetectionEndsTheMatter() {
        Freedom result =
                Freedom.of(0.5, 0.01, List.of(new Period(0.8, false), new Period(0.8, true), new Period(0.8, false)));
        assertTrue(result.periods().get(0).posterior() > 0.8);
        assertEquals(0, result.periods().get(1).posterior());
        assertEquals(0, result.periods().get(2).posterior());
    }

    @Test
    void aContradictionIsUndefinedAndSaid() {
        Freedom result = Freedom.of(0, 0, List.of(new Period(1, false), new Period(0.5, false)));
        assertNull(result.periods().get(0).posterior());
        assertNull(result.periods().get(1).prior());
        assertTrue(result.warnings().get(0).startsWith("Undefined"));
    }

    @Test
    void surveillanceWeakerThanIntroductionSettlesNowhere() {
        assertNull(Freedom.of(0.9, 0.1, List.of(new Period(0.05, false))).equilibriumPrior());
    }

    @Test
    void aSystemIsAsSensitiveAsItsIndependentParts() {
        assertEquals(1 - 0.5 * 0.8 * 0.9, Freedom.system(List.of(0.5, 0.2, 0.1)), 1e-15);
        assertEquals(1, Freedom.system(List.of(0.5, 1.0)));
        assertEquals(0, Freedom.system(List.of()));
    }

    @Test
    void pointsAgreeWithR() {
        for (NamedCsvRecord row : Vectors.read("weighted-points.csv")) {
            double[][] classes = Vectors.matrix(row, "classes");
            double designPrevalence = Vectors.number(row, "designPrevalence");
            double sensitivity = Vectors.number(row, "sensitivity");
            double confidence = Vectors.number(row, "confidence");
            WeightedPoints mean = WeightedPoints.of(designPrevalence, sensitivity, confidence, classes(classes, true));
            WeightedPoints reference =
                    WeightedPoints.of(designPrevalence, sensitivity, confidence, classes(classes, false));
            assertEquals(Convention.POPULATION_MEAN, mean.convention());
            assertEquals(Convention.REFERENCE_CLASS, reference.convention());
            assertNull(reference.populationMean());
            assertEquals(reference.referenceClass(), mean.referenceClass());
            Vectors.same(row, "points", reference.points(), Vectors.CLOSED);
            Vectors.same(row, "required", reference.required(), Vectors.CLOSED);
            Vectors.same(row, "probability", reference.probability(), Vectors.CLOSED);
            Vectors.same(row, "upperLimit", reference.referenceClass().upperLimit(), Vectors.CLOSED);
            Vectors.same(row, "meanPoints", mean.points(), Vectors.CLOSED);
            Vectors.same(row, "meanRequired", mean.required(), Vectors.CLOSED);
            Vectors.same(row, "meanProbability", mean.probability(), Vectors.CLOSED);
            Vectors.same(row, "meanUpperLimit", mean.populationMean().upperLimit(), Vectors.CLOSED);
        }
    }

    private static List<RiskClass> classes(double[][] rows, boolean withShares) {
        return Arrays.stream(rows)
                .map(r -> new RiskClass("", (int) r[0], r[1], withShares ? r[2] : null))
                .toList();
    }

    /** R 4.2.2: -log(.05) / P etc.; 299.6 points for 1 %, 599.1 for .5 %, 325.6 for 1 % at sensitivity .92. */
    @Test
    void reproducesThePointsRequired() {
        List<RiskClass> one = List.of(new RiskClass("adult males", 300, 1.0, null));
        assertEquals(299.6, WeightedPoints.of(0.01, 1, 0.95, one).required(), 0.05);
        assertEquals(599.1, WeightedPoints.of(0.005, 1, 0.95, one).required(), 0.05);
        assertEquals(325.6, WeightedPoints.of(0.01, 0.92, 0.95, one).required(), 0.05);
    }

    @Test
    void aClassWithoutWeightEarnsNothingAndIsCounted() {
        WeightedPoints result = WeightedPoints.of(
                0.01, 1, 0.95, List.of(new RiskClass("a", 100, 1.0, null), new RiskClass("b", 40, null, null)));
        assertEquals(100, result.points());
        assertEquals(40, result.unweighted());
        assertEquals(
                "40 tested have no relative risk and earn no points.",
                result.warnings().get(0));
    }

    @Test
    void prevalenceInAClassIsCappedAtOne() {
        WeightedPoints result = WeightedPoints.of(0.2, 0.9, 0.95, List.of(new RiskClass("sick", 1, 10.0, null)));
        assertEquals(0.9, result.probability(), 1e-12);
        assertTrue(result.warnings().get(0).startsWith("Prevalence in a class is capped"));
    }
}
