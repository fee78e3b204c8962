package org.dentary.statistics.agreement;

import java.util.List;
import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;

/**
 * Agreement of two readers over the same animals, classes in order.
 *
 * @param exact share given the same class
 * @param withinOne share given the same class or the next
 * @param bias mean of the second reader's class less the first's, in classes
 * @param kappa Cohen's
 * @param linear weighted kappa, weights 1 - |i - j| / (k - 1)
 * @param quadratic weighted kappa, weights 1 - (i - j)^2 / (k - 1)^2
 * @param prevalenceAdjusted (k exact - 1) / (k - 1)
 * @param ac1 Gwet's
 * @param kappaMax the kappa these margins allow at most; null when kappa is
 */
public record Agreement(
        int animals,
        Double exact,
        Double withinOne,
        Double bias,
        Kappa kappa,
        Kappa linear,
        Kappa quadratic,
        Double prevalenceAdjusted,
        Double ac1,
        Double kappaMax,
        String method,
        String source,
        List<String> warnings) {

    private static final String METHOD = "Cohen's kappa with Fleiss-Cohen-Everitt errors";
    private static final String SOURCE = "Cohen 1960, Educ Psychol Meas 20:37-46; Cohen 1968, Psychol Bull 70:213-220; "
            + "Fleiss, Cohen & Everitt 1969, Psychol Bull 72:323-327; Byrt, Bishop & Carlin 1993, J Clin Epidemiol 46:423-429; "
            + "Gwet 2008, Br J Math Stat Psychol 61:29-48";

    /**
     * @param counts square: row is the first reader's class, column the second's; at least two classes, counts 0 or more
     * @throws OutOfDomain when the table is not square or has one class, a count is below 0, or {@code confidence} is not in (0, 1)
     */
    public static Agreement of(List<List<Integer>> counts, double confidence) {
        Domain.confidence(confidence);
        Readings readings = Readings.of(counts);
        int k = readings.classes();
        if (readings.animals() == 0) {
            Kappa none = Kappa.undefined("No animal was read by both.");
            return new Agreement(
                    0, null, null, null, none, none, none, null, null, null, METHOD, SOURCE, none.warnings());
        }
        double exact = readings.observed((i, j) -> i == j ? 1 : 0);
        Kappa kappa = Kappa.of(readings, (i, j) -> i == j ? 1 : 0, confidence);
        return new Agreement(
                readings.animals(),
                exact,
                readings.observed((i, j) -> Math.abs(i - j) <= 1 ? 1 : 0),
                readings.observed((i, j) -> j - i),
                kappa,
                Kappa.of(readings, (i, j) -> 1 - Math.abs(i - j) / (k - 1.0), confidence),
                Kappa.of(readings, (i, j) -> 1 - (i - j) * (i - j) / ((k - 1.0) * (k - 1.0)), confidence),
                (k * exact - 1) / (k - 1),
                ac1(readings, exact),
                kappa.estimate() == null ? null : kappaMax(readings),
                METHOD,
                SOURCE,
                kappa.warnings());
    }

    private static double ac1(Readings readings, double exact) {
        double expected = 0;
        for (int i = 0; i < readings.classes(); i++) {
            double q = (readings.row(i) + readings.column(i)) / 2;
            expected += q * (1 - q) / (readings.classes() - 1);
        }
        return (exact - expected) / (1 - expected);
    }

    private static double kappaMax(Readings readings) {
        double most = 0;
        for (int i = 0; i < readings.classes(); i++) {
            most += Math.min(readings.row(i), readings.column(i));
        }
        double expected = readings.expected((i, j) -> i == j ? 1 : 0);
        return (most - expected) / (1 - expected);
    }
}
