package org.dentary.prevalence.comparison;

import java.util.List;
import org.dentary.statistics.comparison.Estimate;

/**
 * One number of a comparison with its two-sided interval.
 *
 * @param measure {@code DIFFERENCE} (first less second, a fraction), {@code ODDS_RATIO}, {@code SLOPE_PER_YEAR} or
 *     {@code PREVALENCE}
 * @param estimate null if undefined; unbounded is the string {@code Infinity}
 * @param lower null if there is no limit
 * @param upper null if there is no limit
 * @param method what a footnote calls it
 * @param source publication
 * @param warnings why a number is missing, and what to mind
 */
public record Figure(
        String measure,
        Double estimate,
        Double lower,
        Double upper,
        String method,
        String source,
        List<String> warnings) {
    static final String DIFFERENCE = "DIFFERENCE";
    static final String ODDS_RATIO = "ODDS_RATIO";
    static final String SLOPE = "SLOPE_PER_YEAR";
    static final String PREVALENCE = "PREVALENCE";

    static Figure of(String measure, Estimate of) {
        return new Figure(measure, of.estimate(), of.lower(), of.upper(), of.method(), of.source(), of.warnings());
    }

    boolean hasLimits() {
        return lower != null && upper != null;
    }

    /** Whether the interval leaves the value out; false without one. */
    boolean leavesOut(double value) {
        return hasLimits() && (lower > value || upper < value);
    }
}
