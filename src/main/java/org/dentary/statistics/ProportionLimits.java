package org.dentary.statistics;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.interval.BinomialConfidenceInterval;
import org.apache.commons.statistics.interval.Interval;

/** The limits behind {@link Proportion}; {@code n} is at least 1 and {@code x} in [0, n] here. */
public final class ProportionLimits {

    private ProportionLimits() {}

    /** Limits of x / n as fractions in [0, 1], lower before upper. */
    public static Limits of(int x, int n, IntervalMethod method, double confidence) {
        double alpha = 1 - confidence;
        return switch (method) {
            case WILSON -> wilson(x, n, alpha);
            case WILSON_CORRECTED -> wilsonCorrected(x, n, Normal.z(confidence));
            case CLOPPER_PEARSON -> library(BinomialConfidenceInterval.CLOPPER_PEARSON, x, n, alpha);
            case JEFFREYS -> library(BinomialConfidenceInterval.JEFFREYS, x, n, alpha);
            case AGRESTI_COULL -> library(BinomialConfidenceInterval.AGRESTI_COULL, x, n, alpha);
            case BLAKER -> new Limits(blakerLower(x, n, alpha), 1 - blakerLower(n - x, n, alpha));
            case MID_P -> midP(x, n, alpha);
        };
    }

    private static Limits library(BinomialConfidenceInterval method, int x, int n, double alpha) {
        Interval interval = method.fromErrorRate(n, x, alpha);
        return new Limits(interval.getLowerBound(), interval.getUpperBound());
    }

    /** The library's limits, exactly 0 at x = 0 and 1 at x = n where rounding leaves a trace. */
    private static Limits wilson(int x, int n, double alpha) {
        Limits limits = library(BinomialConfidenceInterval.WILSON_SCORE, x, n, alpha);
        return new Limits(x == 0 ? 0 : limits.lower(), x == n ? 1 : limits.upper());
    }

    /** Newcombe 1998, Stat Med 17:857-872: the score limits with a correction of 1/(2n). */
    private static Limits wilsonCorrected(int x, int n, double z) {
        double p = (double) x / n;
        double q = (double) (n - x) / n;
        double zz = z * z;
        double below = z * Math.sqrt(zz - 2 - 1.0 / n + 4 * p * (n * q + 1));
        double above = z * Math.sqrt(zz + 2 - 1.0 / n + 4 * p * (n * q - 1));
        double lower = x == 0 ? 0 : (2.0 * x + zz - 1 - below) / (2 * (n + zz));
        double upper = x == n ? 1 : (2.0 * x + zz + 1 + above) / (2 * (n + zz));
        return new Limits(lower, upper);
    }

    /** Each limit puts alpha/2 in its tail, counting half the probability of x itself. */
    private static Limits midP(int x, int n, double alpha) {
        return new Limits(
                midPLower(x, n, alpha), x == 0 ? -Math.expm1(Math.log(alpha) / n) : 1 - midPLower(n - x, n, alpha));
    }

    private static double midPLower(int x, int n, double alpha) {
        if (x == 0) {
            return 0;
        }
        if (x == n) {
            return Math.exp(Math.log(alpha) / n);
        }
        return Roots.between(p -> atLeast(x + 1, n, p) + 0.5 * exactly(x, n, p) - alpha / 2, 0, 1);
    }

    /**
     * Blaker's lower limit, the smallest p whose acceptability reaches alpha. Acceptability is the smaller tail at x plus the largest
     * opposite tail that does not exceed it. Let p(q) be where P(X >= x) = P(X <= q); on [p(q), p(q+1)) the opposite tail is P(X <= q),
     * and the sum falls, then rises to below 2 P(X >= x) at p(q+1). So the limit is the first p(q) with 2 P(X >= x) >= alpha, or, if
     * the sum reaches alpha just before that point, the root in the piece before it.
     */
    private static double blakerLower(int x, int n, double alpha) {
        if (x == 0) {
            return 0;
        }
        int low = 0;
        int high = x - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (2 * atLeast(x, n, tailsMeet(x, middle, n)) >= alpha) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        int q = low;
        double end = tailsMeet(x, q, n);
        double start = q == 0 ? 0 : tailsMeet(x, q - 1, n);
        DoubleUnaryOperator excess = p -> atLeast(x, n, p) + (q == 0 ? 0 : atMost(q - 1, n, p)) - alpha;
        return excess.applyAsDouble(end) <= 0 ? end : Roots.between(excess, start, end);
    }

    /** The p at which P(X >= x) = P(X <= q), q below x: the first rises with p, the second falls. */
    private static double tailsMeet(int x, int q, int n) {
        return Roots.between(p -> atLeast(x, n, p) - atMost(q, n, p), 0, 1);
    }

    private static double atLeast(int x, int n, double p) {
        return BinomialDistribution.of(n, p).survivalProbability(x - 1);
    }

    private static double atMost(int q, int n, double p) {
        return BinomialDistribution.of(n, p).cumulativeProbability(q);
    }

    private static double exactly(int x, int n, double p) {
        return BinomialDistribution.of(n, p).probability(x);
    }
}
