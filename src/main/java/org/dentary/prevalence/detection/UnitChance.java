package org.dentary.prevalence.detection;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;

/**
 * What the sampling of one unit can rule out.
 *
 * @param unit unit code
 * @param tested animals with a final word on accepted tissue, within the scope
 * @param detected those in which it was detected (released)
 * @param pending animals whose result is pending
 * @param assumptions what the plan says for it
 * @param target number to test, all counting alike; null if even the whole herd does not reach the target probability
 * @param probability of having detected the disease at the design prevalence, all animals counting alike; null where
 *     nobody was tested or it was detected
 * @param upperLimit highest prevalence that none detected leaves open, one-sided at the confidence asked for, the test's
 *     sensitivity allowed for; null where nobody was tested or it was detected
 * @param points the same by risk weights; null where the plan names no set
 * @param seasons seasons since the unit was first sampled, oldest first; empty if it never was
 * @param probabilityBelow probability that prevalence is below the design prevalence after those seasons; 0 once
 *     detected, null if never sampled
 * @param more how many more reach the target as things stand, of the class that takes fewest of those that count; null where that is no
 *     question or not possible
 * @param moreAfterPending the same if nothing is detected in the pending ones
 * @param sentence the figures in words
 * @param belowSentence the probability over seasons with its assumptions, in words; empty if there is none
 * @param concerns why the figures do not hold as they stand; empty if nothing is known against them
 */
public record UnitChance(
        String unit,
        String name,
        UnitState state,
        int tested,
        int detected,
        int pending,
        Assumptions assumptions,
        Integer target,
        Double probability,
        Double upperLimit,
        RiskPoints points,
        List<SeasonChance> seasons,
        Double probabilityBelow,
        Integer more,
        Integer moreAfterPending,
        String sentence,
        String belowSentence,
        List<String> concerns) {

    /**
     * One season of a unit.
     *
     * @param sensitivity probability that its sampling detects the disease at the design prevalence
     * @param prior probability of a prevalence below it before the season
     * @param posterior after it; null if undefined
     */
    public record SeasonChance(
            String season, int tested, int detected, double sensitivity, Double prior, Double posterior) {}

    /**
     * Points by risk weights.
     *
     * @param set the set of weights
     * @param citations where they were published
     * @param convention whether the design prevalence is meant as that of the reference class or of the whole herd
     * @param required points at which the target probability is reached
     * @param upperLimit highest prevalence, in the sense of the convention, that none detected leaves open at the target
     *     probability; null without points
     */
    public record RiskPoints(
            String set,
            List<String> citations,
            String convention,
            double points,
            double required,
            double probability,
            Double upperLimit) {}

    /** The probability by which the target is judged: by weights where the plan names a set. */
    @JsonIgnore
    public Double judged() {
        return points == null || probability == null ? probability : Double.valueOf(points.probability());
    }
}
