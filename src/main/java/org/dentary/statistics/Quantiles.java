package org.dentary.statistics;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.GammaDistribution;

/** Beta and gamma quantiles to full precision: the library's inverse stops at an absolute error of 1e-9, too coarse for small shares. */
final class Quantiles {

    private Quantiles() {}

    static double beta(double probability, double alpha, double beta) {
        return polished(BetaDistribution.of(alpha, beta), probability);
    }

    static double gamma(double probability, double shape, double scale) {
        return scale * polished(GammaDistribution.of(shape, 1), probability);
    }

    /** A root search around the library's answer, in the smaller tail. */
    private static double polished(ContinuousDistribution distribution, double probability) {
        double start = distribution.inverseCumulativeProbability(probability);
        DoubleUnaryOperator excess = probability <= 0.5
                ? x -> distribution.cumulativeProbability(x) - probability
                : x -> 1 - probability - distribution.survivalProbability(x);
        double step = Math.max(1e-8, start * 1e-8);
        double low = Math.max(distribution.getSupportLowerBound(), start - step);
        double high = Math.min(distribution.getSupportUpperBound(), start + step);
        if (excess.applyAsDouble(low) > 0 || excess.applyAsDouble(high) < 0) {
            return start;
        }
        return Roots.between(excess, low, high);
    }
}
