package org.dentary.statistics;

import java.util.ArrayList;
import java.util.List;

/**
 * One proportion with a two-sided interval.
 *
 * @param estimate detected / tested in [0, 1]; null when nothing was tested
 * @param lower lower limit in [0, 1]; null when nothing was tested
 * @param upper upper limit in [0, 1]; null when nothing was tested
 * @param detected count detected, 0 or more
 * @param tested count tested, {@code detected} or more
 * @param interval the method of the interval
 * @param confidence two-sided level, a fraction in (0, 1)
 * @param method what a footnote says of the interval
 * @param source the publication of the method
 * @param warnings sentences to print beside the figure; empty when there is nothing to say
 */
public record Proportion(
        Double estimate,
        Double lower,
        Double upper,
        int detected,
        int tested,
        IntervalMethod interval,
        double confidence,
        String method,
        String source,
        List<String> warnings) {

    /** Below this many tested an interval is shown with a warning. */
    static final int FEW_TESTED = 5;

    /**
     * Estimates one proportion. The interval is that of a simple random sample from a population much larger than the sample.
     *
     * @throws OutOfDomain when {@code detected} or {@code tested} is below 0, {@code detected} exceeds {@code tested}, or
     *     {@code confidence} is not in (0, 1)
     */
    public static Proportion of(int detected, int tested, IntervalMethod interval, double confidence) {
        Domain.counts("detected", detected, "tested", tested);
        Domain.confidence(confidence);
        Limits limits = tested == 0 ? Limits.UNDEFINED : ProportionLimits.of(detected, tested, interval, confidence);
        return new Proportion(
                tested == 0 ? null : (double) detected / tested,
                limits.lower(),
                limits.upper(),
                detected,
                tested,
                interval,
                confidence,
                interval.label(),
                interval.source(),
                warnings(detected, tested, limits));
    }

    private static List<String> warnings(int detected, int tested, Limits limits) {
        List<String> warnings = new ArrayList<>();
        if (tested == 0) {
            warnings.add("Not sampled: nothing was tested, so there is no estimate.");
            return List.copyOf(warnings);
        }
        if (tested < FEW_TESTED) {
            warnings.add("Fewer than " + FEW_TESTED + " tested: the interval says little.");
        }
        if (detected == 0) {
            warnings.add("None detected does not show absence: the upper limit is " + Percent.of(limits.upper(), tested)
                    + ".");
        }
        return List.copyOf(warnings);
    }
}
