package org.dentary.statistics.agreement;

import java.util.List;
import org.dentary.statistics.Normal;

/**
 * A kappa, weighted or not, with Fleiss, Cohen and Everitt's large-sample errors.
 *
 * @param estimate (observed - expected) / (1 - expected); null when expected agreement is 1
 * @param standardError for the interval
 * @param nullStandardError for a test of no agreement beyond chance
 * @param lower estimate - z standardError, not clipped
 * @param upper estimate + z standardError, not clipped
 */
public record Kappa(
        Double estimate,
        Double standardError,
        Double nullStandardError,
        Double lower,
        Double upper,
        List<String> warnings) {

    /** A variance below this is rounding, and taken as 0. */
    private static final double NO_VARIANCE = 1e-14;

    static Kappa undefined(String reason) {
        return new Kappa(null, null, null, null, null, List.of(reason));
    }

    static Kappa of(Readings readings, Readings.Weight weight, double confidence) {
        double observed = readings.observed(weight);
        double expected = readings.expected(weight);
        if (1 - expected < NO_VARIANCE) {
            return undefined("Kappa undefined: chance alone would agree everywhere; read the share that agrees.");
        }
        double kappa = (observed - expected) / (1 - expected);
        double scale = readings.animals() * (1 - expected) * (1 - expected);
        double error = error(squares(readings, weight, kappa) - square(kappa - expected * (1 - kappa)), scale);
        double nullError = error(nullSquares(readings, weight) - expected * expected, scale);
        double half = Normal.z(confidence) * error;
        return new Kappa(kappa, error, nullError, kappa - half, kappa + half, List.of());
    }

    /** Sum of p_ij (w_ij - (wbar_i + wbar_j)(1 - kappa))^2. */
    private static double squares(Readings readings, Readings.Weight weight, double kappa) {
        double[] rowMeans = rowMeans(readings, weight);
        double[] columnMeans = columnMeans(readings, weight);
        return readings.observed((i, j) -> square(weight.of(i, j) - (rowMeans[i] + columnMeans[j]) * (1 - kappa)));
    }

    /** Sum of p_i. p_.j (w_ij - (wbar_i + wbar_j))^2. */
    private static double nullSquares(Readings readings, Readings.Weight weight) {
        double[] rowMeans = rowMeans(readings, weight);
        double[] columnMeans = columnMeans(readings, weight);
        return readings.expected((i, j) -> square(weight.of(i, j) - (rowMeans[i] + columnMeans[j])));
    }

    private static double[] rowMeans(Readings readings, Readings.Weight weight) {
        double[] means = new double[readings.classes()];
        for (int i = 0; i < means.length; i++) {
            for (int j = 0; j < means.length; j++) {
                means[i] += weight.of(i, j) * readings.column(j);
            }
        }
        return means;
    }

    private static double[] columnMeans(Readings readings, Readings.Weight weight) {
        double[] means = new double[readings.classes()];
        for (int j = 0; j < means.length; j++) {
            for (int i = 0; i < means.length; i++) {
                means[j] += weight.of(i, j) * readings.row(i);
            }
        }
        return means;
    }

    private static double error(double sum, double scale) {
        double variance = sum / scale;
        return variance < NO_VARIANCE ? 0 : Math.sqrt(variance);
    }

    private static double square(double value) {
        return value * value;
    }
}
