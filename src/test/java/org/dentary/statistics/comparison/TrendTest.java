package org.dentary.statistics.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Arrays;
import java.util.List;
import org.dentary.statistics.Vectors;
import org.dentary.statistics.comparison.Trend.Group;
import org.junit.jupiter.api.Test;

public class TrendTest {

    @Test
    void agreesWithR() {
        for (NamedCsvRecord row : Vectors.read("trend.csv")) {
            Trend result = Trend.of(groups(Vectors.matrix(row, "groups")));
            Vectors.same(row, "slope", result.slope(), Vectors.CLOSED);
            same(row, "trend", result.trend());
            same(row, "heterogeneity", result.heterogeneity());
            same(row, "departure", result.departure());
        }
    }

    /** The departure is a difference of two statistics: its agreement is relative to them. */
    private static void same(NamedCsvRecord row, String name, TestStatistic actual) {
        Double expected = Vectors.number(row, name);
        assertEquals(expected == null, actual.statistic() == null, row::toString);
        if (expected != null) {
            assertEquals(
                    expected,
                    actual.statistic(),
                    1e-9 * Math.max(1, Vectors.number(row, "heterogeneity")),
                    row::toString);
            assertEquals(Vectors.number(row, name + "P"), actual.p(), 1e-9, row::toString);
        }
    }

    public static List<Group> groups(double[]... rows) {
        return Arrays.stream(rows)
                .map(r -> new Group("", r[0], (int) r[1], (int) r[2]))
                .toList();
    }

    /** Agresti, Categorical Data Analysis, section 3.4: M^2 = 6.57, p = .010 (section from memory; with N instead of N - 1 6.5701). */
    @Test
    void reproducesAlcoholAndMalformation() {
        Trend result = Trend.of(groups(
                new double[] {0, 48, 17114},
                new double[] {0.5, 38, 14502},
                new double[] {1.5, 5, 793},
                new double[] {4, 1, 127},
                new double[] {7, 1, 38}));
        assertEquals(6.5701, result.trend().statistic(), 0.00005);
        assertEquals(0.010, result.trend().p(), 0.0005);
    }

    /** Fleiss 1981, Statistical Methods for Rates and Proportions, smokers; R 4.2.2: prop.trend.test(smokers, patients). */
    @Test
    void reproducesSmokers() {
        Trend result = Trend.of(groups(
                new double[] {1, 83, 86}, new double[] {2, 90, 93}, new double[] {3, 129, 136}, new double[] {4, 70, 82
                }));
        assertEquals(8.2249, result.trend().statistic(), 0.00005);
        assertEquals(0.004132, result.trend().p(), 0.0000005);
    }

    @Test
    void aHumpShowsAsDepartureNotAsTrend() {
        Trend result =
                Trend.of(groups(new double[] {0.5, 2, 100}, new double[] {1.5, 20, 100}, new double[] {2.5, 2, 100}));
        assertEquals(0, result.trend().statistic(), 1e-12);
        assertTrue(result.departure().p() < 1e-4);
        assertEquals(1, result.departure().degreesOfFreedom());
    }

    @Test
    void undefinedSaysWhy() {
        Trend nobody = Trend.of(groups(new double[] {1, 0, 10}, new double[] {2, 0, 20}));
        assertNull(nobody.trend().p());
        assertEquals(
                "No contrast possible: nobody or everybody was detected.",
                nobody.warnings().get(0));
        Trend equal = Trend.of(groups(new double[] {2, 1, 10}, new double[] {2, 5, 20}));
        assertNull(equal.slope());
        assertNotNull(equal.heterogeneity().p());
        assertEquals(List.of("No trend: all scores are equal."), equal.warnings());
        Trend two = Trend.of(groups(new double[] {1, 1, 10}, new double[] {2, 5, 20}));
        assertEquals(
                List.of("Two groups always lie on a line."), two.departure().warnings());
        Trend left = Trend.of(groups(new double[] {1, 1, 10}, new double[] {2, 5, 20}, new double[] {3, 0, 0}));
        assertEquals(List.of("1 of 3 groups have nothing tested and are left out."), left.warnings());
    }

    /** R 4.2.2: see holm.R. */
    @Test
    void holmAgreesWithR() {
        for (NamedCsvRecord row : Vectors.read("holm.csv")) {
            List<Double> expected = Vectors.numbers(row.getField("adjusted"));
            List<Double> actual = Holm.adjust(Vectors.numbers(row.getField("p")));
            assertEquals(expected.size(), actual.size());
            for (int i = 0; i < expected.size(); i++) {
                Vectors.same(row::toString, expected.get(i), actual.get(i), Vectors.CLOSED);
            }
        }
    }
}
