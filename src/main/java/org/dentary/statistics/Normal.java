package org.dentary.statistics;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Quantiles and tails used all over the package. */
public final class Normal {

    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

    private Normal() {}

    /** The two-sided normal quantile, z(1 - alpha/2) with alpha = 1 - confidence. */
    public static double z(double confidence) {
        return STANDARD.inverseSurvivalProbability((1 - confidence) / 2);
    }

    /** The two-sided level whose normal quantile is {@code z}. */
    public static double confidence(double z) {
        return 1 - 2 * STANDARD.survivalProbability(z);
    }

    /** The upper tail of a chi-square statistic. */
    public static double chiSquareTail(double statistic, int degreesOfFreedom) {
        return ChiSquaredDistribution.of(degreesOfFreedom).survivalProbability(statistic);
    }
}
