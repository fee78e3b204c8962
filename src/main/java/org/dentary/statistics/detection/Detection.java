package org.dentary.statistics.detection;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;

/**
 * What a sample from one well-mixed herd can be expected to show, false detections included.
 *
 * @param probability chance of at least one detection, true or false
 * @param probabilityTrue chance of at least one true detection
 * @param probabilityIfAbsent chance of at least one detection in a herd without infection
 * @param byDetected chance of exactly 0, 1, 2 ... detections; up to the number tested, or to {@link #LISTED} of them
 * @param macDiarmid approximation 1 - (1 - n Se / N)^d; null when n Se exceeds N
 * @param binomial approximation 1 - (1 - P Se)^n for a herd much larger than the sample
 */
public record Detection(
        double probability,
        double probabilityTrue,
        double probabilityIfAbsent,
        List<Double> byDetected,
        Double macDiarmid,
        double binomial,
        int infected,
        String method,
        String source,
        List<String> warnings) {

    /** Longest list of {@code byDetected}; beyond it the list stops. */
    public static final int LISTED = 1000;

    private static final String METHOD = "Exact hypergeometric with binomial test errors";
    private static final String SOURCE =
            "Cameron & Baldock 1998, Prev Vet Med 34:1-17; " + "approximation MacDiarmid 1988, Prev Vet Med 5:283-289";
    private static final double NEGLIGIBLE = 1e-22;

    /**
     * Tests {@code tested} of the herd; 0 tested or 0 infected is allowed.
     *
     * @throws OutOfDomain when {@code tested} is below 0 or above the population, or {@code sensitivity} or {@code specificity} is not
     *     in [0, 1]
     */
    public static Detection of(Herd herd, int tested, double sensitivity, double specificity) {
        Domain.atLeast(0, "tested", tested);
        Domain.atMost(herd.population(), "population", "tested", tested);
        Domain.probability("sensitivity", sensitivity);
        Domain.probability("specificity", specificity);
        List<String> warnings = new ArrayList<>();
        double probabilityTrue = herd.detection(tested, sensitivity);
        double spared = Math.pow(specificity, tested);
        double covered = tested * sensitivity / herd.population();
        if (covered > 1) {
            warnings.add("MacDiarmid's approximation does not hold: tested x sensitivity exceeds the population.");
        }
        if (specificity < 1) {
            warnings.add("The test errs the other way too: a detection may be false until confirmed.");
        }
        if (tested > LISTED) {
            warnings.add("Chances are listed up to " + LISTED + " detections.");
        }
        return new Detection(
                specificity == 1 ? probabilityTrue : anyDetection(herd, tested, sensitivity, specificity),
                probabilityTrue,
                1 - spared,
                byDetected(herd, tested, sensitivity, specificity),
                covered > 1 ? null : Double.valueOf(atLeastOne(covered, herd.infected())),
                atLeastOne(herd.prevalence() * sensitivity, tested),
                herd.infected(),
                METHOD,
                SOURCE,
                List.copyOf(warnings));
    }

    /** Chance of at least one true detection for every number tested in {@code tested}, for a curve. */
    public static List<Double> curve(Herd herd, List<Integer> tested, double sensitivity) {
        Domain.probability("sensitivity", sensitivity);
        return tested.stream().map(n -> herd.detection(n, sensitivity)).toList();
    }

    /** 1 - (1 - chance)^trials, 0 without trials. */
    static double atLeastOne(double chance, int trials) {
        return chance == 0 || trials == 0 ? 0 : -Math.expm1(trials * Math.log1p(-chance));
    }

    private static double anyDetection(Herd herd, int tested, double sensitivity, double specificity) {
        double[] sum = {0};
        double logMiss = Math.log1p(-sensitivity);
        double logSpared = Math.log(specificity);
        herd.forEachInfectedTested(tested, (y, probability) -> {
            double logNone = (y == 0 ? 0 : y * logMiss) + (y == tested ? 0 : (tested - y) * logSpared);
            sum[0] -= probability * Math.expm1(logNone);
        });
        return Math.min(1, sum[0]);
    }

    /** P(T = t) = sum over y of Hyp(y) times the sum over j of Bin(j; y, Se) Bin(t - j; n - y, 1 - Sp). */
    private static List<Double> byDetected(Herd herd, int tested, double sensitivity, double specificity) {
        double[] sums = new double[Math.min(tested, LISTED) + 1];
        double[] peak = {0};
        herd.forEachInfectedTested(tested, (y, probability) -> {
            peak[0] = Math.max(peak[0], probability);
            if (probability > peak[0] * NEGLIGIBLE) {
                double[] hits = binomial(y, sensitivity, sums.length);
                double[] falseHits = binomial(tested - y, 1 - specificity, sums.length);
                addConvolution(sums, probability, hits, falseHits);
            }
        });
        return Arrays.stream(sums).boxed().toList();
    }

    private static void addConvolution(double[] sums, double weight, double[] hits, double[] falseHits) {
        for (int j = 0; j < hits.length; j++) {
            if (hits[j] > NEGLIGIBLE) {
                for (int k = 0; k < falseHits.length && j + k < sums.length; k++) {
                    sums[j + k] += weight * hits[j] * falseHits[k];
                }
            }
        }
    }

    /** Binomial probabilities of 0, 1, 2 ... up to {@code trials}, at most {@code longest} of them; none when they are all negligible. */
    private static double[] binomial(int trials, double chance, int longest) {
        if (chance == 0 || trials == 0) {
            return new double[] {1};
        }
        BinomialDistribution distribution = BinomialDistribution.of(trials, chance);
        if (distribution.cumulativeProbability(longest) < NEGLIGIBLE) {
            return new double[0];
        }
        double[] probabilities = new double[Math.min(trials + 1, longest)];
        for (int i = 0; i < probabilities.length; i++) {
            probabilities[i] = distribution.probability(i);
        }
        return probabilities;
    }
}
