package org.dentary.statistics.standardisation;

import java.util.List;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.dentary.statistics.IntervalMethod;
import org.dentary.statistics.Limits;
import org.dentary.statistics.Normal;
import org.dentary.statistics.ProportionLimits;
import org.dentary.statistics.standardisation.Standardised.Stratum;

/** The sums behind {@link Standardised}; every stratum has weight and somebody tested. */
record StandardisedSums(
        double estimate,
        double crude,
        double binomialVariance,
        double poissonVariance,
        double squaredWeights,
        double tested,
        double largestCoefficient,
        double meanCoefficient,
        double meanSquaredCoefficient,
        List<Stratum> strata,
        double weight) {

    static StandardisedSums of(List<Stratum> strata) {
        double weight = strata.stream().mapToDouble(Stratum::weight).sum();
        double y = 0;
        double binomial = 0;
        double poisson = 0;
        double squared = 0;
        double tested = 0;
        double detected = 0;
        double largest = 0;
        double coefficients = 0;
        double coefficientSquares = 0;
        boolean all = true;
        for (Stratum stratum : strata) {
            double w = stratum.weight() / weight;
            double p = (double) stratum.detected() / stratum.tested();
            double c = w / stratum.tested();
            y += w * p;
            binomial += w * w * p * (1 - p) / stratum.tested();
            poisson += c * c * stratum.detected();
            squared += w * w / stratum.tested();
            tested += stratum.tested();
            detected += stratum.detected();
            largest = Math.max(largest, c);
            coefficients += c;
            coefficientSquares += c * c;
            all &= stratum.detected() == stratum.tested();
        }
        return new StandardisedSums(
                all ? 1 : Math.min(1, y),
                detected / tested,
                binomial,
                poisson,
                squared,
                tested,
                largest,
                coefficients / strata.size(),
                coefficientSquares / strata.size(),
                strata,
                weight);
    }

    /** min(tested, y (1 - y) / v); with no variance at all, 1 / sum of w^2 / n. */
    double effectiveN() {
        if (binomialVariance == 0) {
            return 1 / squaredWeights;
        }
        return Math.min(tested, estimate * (1 - estimate) / binomialVariance);
    }

    /** Fay and Feuer 1997: gamma limits with the largest coefficient added for the upper one. */
    Limits gamma(double alpha) {
        double lower = estimate == 0
                ? 0
                : GammaDistribution.of(estimate * estimate / poissonVariance, poissonVariance / estimate)
                        .inverseCumulativeProbability(alpha / 2);
        return new Limits(lower, upper(alpha, largestCoefficient, largestCoefficient * largestCoefficient));
    }

    /** Tiwari, Clegg and Zou 2006: the mean coefficient and the mean of its square instead of the largest. */
    Limits tiwari(double alpha, double lower) {
        return new Limits(lower, upper(alpha, meanCoefficient, meanSquaredCoefficient));
    }

    private double upper(double alpha, double more, double moreVariance) {
        double mean = estimate + more;
        double variance = poissonVariance + moreVariance;
        return GammaDistribution.of(mean * mean / variance, variance / mean)
                .inverseCumulativeProbability(1 - alpha / 2);
    }

    /** Yan and Su 2010 with fixed weights: Wilson in every stratum at a quantile shrunk for pooling. */
    Limits stratifiedWilson(double confidence) {
        double above = 0;
        double below = 0;
        for (Stratum stratum : strata) {
            double w = stratum.weight() / weight;
            double p = (double) stratum.detected() / stratum.tested();
            double v = p * (1 - p) / stratum.tested();
            above += w * w * v;
            below += w * Math.sqrt(v);
        }
        if (below == 0) {
            return Limits.UNDEFINED;
        }
        double stratumConfidence = Normal.confidence(Normal.z(confidence) * Math.sqrt(above) / below);
        double lower = 0;
        double upper = 0;
        for (Stratum stratum : strata) {
            double w = stratum.weight() / weight;
            Limits limits =
                    ProportionLimits.of(stratum.detected(), stratum.tested(), IntervalMethod.WILSON, stratumConfidence);
            lower += w * limits.lower();
            upper += w * limits.upper();
        }
        return new Limits(lower, upper);
    }
}
