package org.dentary.statistics.detection;

import org.apache.commons.statistics.distribution.HypergeometricDistribution;
import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;

/**
 * A herd of known size with a whole number infected, from which a simple random sample is tested without replacement.
 *
 * @param population animals in the herd, 1 or more
 * @param infected infected animals among them, in [0, population]
 */
public record Herd(int population, int infected) {

    /** Keeps {@code floor(0.29 x 100)} at 29 where binary fractions would make it 28. */
    private static final double ROUNDING = 1e-9;

    /** Terms of a distribution below this share of its largest are left out of a sum. */
    private static final double NEGLIGIBLE = 1e-25;

    /**
     * @throws OutOfDomain when {@code population} is below 1 or above 10,000,000, or {@code infected} is below 0 or above it
     */
    public Herd {
        Domain.atLeast(1, "population", population);
        Domain.count("population", population);
        Domain.atLeast(0, "infected", infected);
        Domain.atMost(population, "population", "infected", infected);
    }

    /**
     * The herd at a design prevalence in (0, 1]: {@code designPrevalence x population} rounded down, at least 1.
     *
     * @throws OutOfDomain when the population is out of range or the design prevalence not in (0, 1]
     */
    public static Herd atDesignPrevalence(int population, double designPrevalence) {
        Domain.atLeast(1, "population", population);
        Domain.count("population", population);
        Domain.positiveProbability("designPrevalence", designPrevalence);
        return new Herd(population, Math.max(1, (int) Math.floor(designPrevalence * population + ROUNDING)));
    }

    /** Infected share of the herd. */
    public double prevalence() {
        return (double) infected / population;
    }

    /**
     * Exact probability that {@code tested} animals yield at least one true detection by a test of this sensitivity and perfect
     * specificity: sum over y of Hyp(y) (1 - (1 - sensitivity)^y). The arguments are within their domain here.
     */
    double detection(int tested, double sensitivity) {
        double logMiss = Math.log1p(-sensitivity);
        double[] sum = {0};
        forEachInfectedTested(
                tested, (y, probability) -> sum[0] += probability * (y == 0 ? 0 : -Math.expm1(y * logMiss)));
        return Math.min(1, sum[0]);
    }

    interface Term {
        void accept(int infectedTested, double probability);
    }

    /** Hypergeometric probabilities of the infected among the tested, from the likeliest outwards until they no longer matter. */
    void forEachInfectedTested(int tested, Term term) {
        int least = Math.max(0, tested - (population - infected));
        int most = Math.min(tested, infected);
        int mode = (int) Math.min(most, Math.max(least, ((tested + 1.0) * (infected + 1.0)) / (population + 2.0)));
        double peak =
                HypergeometricDistribution.of(population, infected, tested).probability(mode);
        term.accept(mode, peak);
        double probability = peak;
        for (int y = mode; y < most && probability > peak * NEGLIGIBLE; y++) {
            probability *=
                    (double) (infected - y) * (tested - y) / ((y + 1.0) * (population - infected - tested + y + 1.0));
            term.accept(y + 1, probability);
        }
        probability = peak;
        for (int y = mode; y > least && probability > peak * NEGLIGIBLE; y--) {
            probability *=
                    (double) y * (population - infected - tested + y) / ((infected - y + 1.0) * (tested - y + 1.0));
            term.accept(y - 1, probability);
        }
    }
}
