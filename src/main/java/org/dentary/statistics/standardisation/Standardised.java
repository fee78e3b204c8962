package org.dentary.statistics.standardisation;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.dentary.statistics.Domain;
import org.dentary.statistics.Limits;
import org.dentary.statistics.OutOfDomain;

/**
 * Prevalence standardised directly to a reference herd. The weights are fixed in advance, named and dated by whoever gives them; they
 * are divided by their sum here and never otherwise changed.
 *
 * @param estimate sum of weight times stratum proportion
 * @param lower Clopper-Pearson at the effective sample size
 * @param upper likewise
 * @param crude all detected / all tested
 * @param effectiveN the size of a simple random sample with the same variance, at most the number tested
 * @param gamma Fay and Feuer's limits; made for rates, so the upper one may exceed 1 and is given so
 * @param tiwari Tiwari's upper limit, narrower; its lower one is Fay and Feuer's
 * @param stratifiedWilson Yan and Su's limits
 */
public record Standardised(
        double estimate,
        double lower,
        double upper,
        double crude,
        double effectiveN,
        Limits gamma,
        Limits tiwari,
        Limits stratifiedWilson,
        String method,
        String source,
        List<String> warnings) {

    /** One stratum with the share, or the number, of the reference herd that is in it. */
    public record Stratum(String label, int detected, int tested, double weight) {}

    private static final String METHOD = "Direct standardisation, Clopper-Pearson at the effective sample size";
    private static final String SOURCE =
            "Korn & Graubard 1998, Survey Methodol 24:193-201 (without their t adjustment); "
                    + "gamma: Fay & Feuer 1997, Stat Med 16:791-801; Tiwari, Clegg & Zou 2006, Stat Methods Med Res 15:547-569; "
                    + "stratified Wilson: Yan & Su 2010, Stat Biopharm Res 2:329-335";

    /**
     * Standardises over the strata, in any order; those of weight 0 are dropped.
     *
     * @throws OutOfDomain when there is no stratum, a count is out of range, a weight is below 0 or not finite, all weights are 0, a
     *     stratum has weight but nothing tested, or {@code confidence} is not in (0, 1); the field is
     *     {@code strata[index].weight} and so on
     */
    public static Standardised of(List<Stratum> strata, double confidence) {
        Domain.notEmpty("strata", strata);
        Domain.confidence(confidence);
        List<String> warnings = new ArrayList<>();
        List<Stratum> used = checked(strata);
        if (used.isEmpty()) {
            throw new OutOfDomain(
                    "strata[0].weight", strata.get(0).weight(), "at least one stratum must have a weight above 0");
        }
        if (used.size() < strata.size()) {
            warnings.add(
                    (strata.size() - used.size()) + " of " + strata.size() + " strata have weight 0 and are dropped.");
        }
        StandardisedSums sums = StandardisedSums.of(used);
        double alpha = 1 - confidence;
        Limits wilson = sums.stratifiedWilson(confidence);
        if (!wilson.defined()) {
            warnings.add("Stratified Wilson limits undefined: in every stratum nobody or everybody was detected.");
        }
        Limits gamma = sums.gamma(alpha);
        if (gamma.upper() > 1) {
            warnings.add("The gamma upper limit exceeds 1: it was made for rates, not proportions.");
        }
        double effectiveN = sums.effectiveN();
        double y = sums.estimate();
        return new Standardised(
                y,
                y == 0
                        ? 0
                        : BetaDistribution.of(y * effectiveN, effectiveN - y * effectiveN + 1)
                                .inverseCumulativeProbability(alpha / 2),
                y == 1
                        ? 1
                        : BetaDistribution.of(y * effectiveN + 1, effectiveN - y * effectiveN)
                                .inverseCumulativeProbability(1 - alpha / 2),
                sums.crude(),
                effectiveN,
                gamma,
                sums.tiwari(alpha, gamma.lower()),
                wilson,
                METHOD,
                SOURCE,
                List.copyOf(warnings));
    }

    private static List<Stratum> checked(List<Stratum> strata) {
        List<Stratum> used = new ArrayList<>();
        for (int i = 0; i < strata.size(); i++) {
            Stratum stratum = strata.get(i);
            String at = "strata[" + i + "].";
            Domain.counts(at + "detected", stratum.detected(), at + "tested", stratum.tested());
            Domain.notBelowZero(at + "weight", stratum.weight());
            if (stratum.weight() > 0 && stratum.tested() == 0) {
                throw new OutOfDomain(
                        at + "weight",
                        stratum.weight(),
                        "this stratum has weight but nothing tested; merge strata or set its weight to 0");
            }
            if (stratum.weight() > 0) {
                used.add(stratum);
            }
        }
        return used;
    }
}
