package org.dentary.statistics.comparison;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.HypergeometricDistribution;
import org.dentary.statistics.Normal;
import org.dentary.statistics.Roots;

/**
 * The odds ratio of a two by two table.
 *
 * @param estimate ad / bc; {@link Double#POSITIVE_INFINITY} when only bc is 0, null when both products are 0
 * @param woolf its interval on the log scale; null limits when a cell is 0
 * @param haldaneAnscombe Woolf's with 1/2 added to every cell: another estimate, never to be read as {@code estimate}
 * @param conditional maximum likelihood given the margins, with exact limits
 */
public record OddsRatio(
        Double estimate, Estimate woolf, Estimate haldaneAnscombe, Estimate conditional, List<String> warnings) {

    private static final String WOOLF = "Woolf 1955, Ann Hum Genet 19:251-253";
    private static final String HALDANE =
            "Haldane 1956, Ann Hum Genet 20:309-311; Anscombe 1956, Biometrika 43:461-464";
    private static final String CORNFIELD =
            "Cornfield 1956, Proc 3rd Berkeley Symp 4:135-148; Breslow & Day 1980, Statistical Methods in Cancer Research I, ch. 4";
    private static final String ZERO_CELL = "No Woolf interval: a cell is 0; see the exact limits.";
    private static final String UNDEFINED =
            "Odds ratio undefined: nobody or everybody was detected, or a group is empty.";

    private static final String TOO_MANY =
            "Exact limits are not computed over more than 100,000 tables; Woolf's are as good there.";
    private static final int MOST_TABLES = 100_000;

    static OddsRatio of(TwoByTwo table, double confidence) {
        Double estimate = table.oddsRatio();
        double z = Normal.z(confidence);
        return new OddsRatio(
                estimate,
                woolf(table, estimate, z),
                haldaneAnscombe(table, z),
                conditional(table, confidence),
                estimate == null ? List.of(UNDEFINED) : List.of());
    }

    private static Estimate woolf(TwoByTwo table, Double estimate, double z) {
        String method = "Woolf log interval";
        if (estimate == null) {
            return Estimate.undefined(method, WOOLF, UNDEFINED);
        }
        if (table.a() == 0 || table.b() == 0 || table.c() == 0 || table.d() == 0) {
            return Estimate.withoutLimits(estimate, method, WOOLF, ZERO_CELL);
        }
        double error = Math.sqrt(1.0 / table.a() + 1.0 / table.b() + 1.0 / table.c() + 1.0 / table.d());
        return Estimate.onLogScale(estimate, error, z, method, WOOLF);
    }

    private static Estimate haldaneAnscombe(TwoByTwo table, double z) {
        String method = "Woolf log interval with 1/2 added to every cell";
        if (table.n1() == 0 || table.n2() == 0) {
            return Estimate.undefined(method, HALDANE, TwoProportions.NOT_SAMPLED);
        }
        double a = table.a() + 0.5;
        double b = table.b() + 0.5;
        double c = table.c() + 0.5;
        double d = table.d() + 0.5;
        return Estimate.onLogScale(a * d / (b * c), Math.sqrt(1 / a + 1 / b + 1 / c + 1 / d), z, method, HALDANE);
    }

    private static Estimate conditional(TwoByTwo table, double confidence) {
        String method = "Conditional maximum likelihood, exact limits";
        if (table.n1() == 0 || table.n2() == 0) {
            return Estimate.undefined(method, CORNFIELD, TwoProportions.NOT_SAMPLED);
        }
        if (Math.min(Math.min(table.n1(), table.n2()), Math.min(table.detected(), table.notDetected())) > MOST_TABLES) {
            return Estimate.undefined(method, CORNFIELD, TOO_MANY);
        }
        Conditional likelihood = new Conditional(table);
        int a = table.a();
        double tail = (1 - confidence) / 2;
        boolean smallest = a == likelihood.least;
        boolean largest = a == likelihood.most;
        double lower = smallest ? 0 : likelihood.solve(logRatio -> likelihood.atLeast(a, logRatio) - tail);
        double upper = largest
                ? Double.POSITIVE_INFINITY
                : likelihood.solve(logRatio -> tail - likelihood.atMost(a, logRatio));
        if (smallest && largest) {
            return new Estimate(null, lower, upper, method, CORNFIELD, List.of(UNDEFINED));
        }
        double estimate = smallest
                ? 0
                : largest ? Double.POSITIVE_INFINITY : likelihood.solve(logRatio -> likelihood.mean(logRatio) - a);
        return Estimate.of(estimate, lower, upper, method, CORNFIELD);
    }

    /** The noncentral hypergeometric distribution of the first cell: probability proportional to C(n1,t) C(n2,m-t) psi^t. */
    private static final class Conditional {

        private final int least;
        private final int most;
        private final double[] logWeights;

        Conditional(TwoByTwo table) {
            HypergeometricDistribution central = FisherExact.margins(table);
            least = central.getSupportLowerBound();
            most = central.getSupportUpperBound();
            logWeights = new double[most - least + 1];
            for (int t = least; t <= most; t++) {
                logWeights[t - least] = central.logProbability(t);
            }
        }

        double atLeast(int a, double logRatio) {
            return sums(a, most, logRatio);
        }

        double atMost(int a, double logRatio) {
            return sums(least, a, logRatio);
        }

        private double sums(int from, int to, double logRatio) {
            double[] weights = weights(logRatio);
            double within = 0;
            double all = 0;
            for (int t = least; t <= most; t++) {
                all += weights[t - least];
                within += t >= from && t <= to ? weights[t - least] : 0;
            }
            return within / all;
        }

        double mean(double logRatio) {
            double[] weights = weights(logRatio);
            double sum = 0;
            double all = 0;
            for (int t = least; t <= most; t++) {
                all += weights[t - least];
                sum += t * weights[t - least];
            }
            return sum / all;
        }

        /** Relative to the largest, so that none overflows. */
        private double[] weights(double logRatio) {
            double[] weights = new double[logWeights.length];
            double largest = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < weights.length; i++) {
                weights[i] = logWeights[i] + (least + i) * logRatio;
                largest = Math.max(largest, weights[i]);
            }
            for (int i = 0; i < weights.length; i++) {
                weights[i] = Math.exp(weights[i] - largest);
            }
            return weights;
        }

        /** The odds ratio at which a function rising in its logarithm is 0. */
        double solve(DoubleUnaryOperator rising) {
            double low = -1;
            while (rising.applyAsDouble(low) > 0) {
                low *= 2;
            }
            double high = 1;
            while (rising.applyAsDouble(high) < 0) {
                high *= 2;
            }
            return Math.exp(Roots.between(rising, low, high));
        }
    }
}
