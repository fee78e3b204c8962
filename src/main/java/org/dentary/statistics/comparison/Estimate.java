package org.dentary.statistics.comparison;

import java.util.List;

/**
 * A value with its interval. Any of the three numbers is null when undefined, and then {@code warnings} says why; an unbounded number
 * is {@link Double#POSITIVE_INFINITY}.
 */
public record Estimate(
        Double estimate, Double lower, Double upper, String method, String source, List<String> warnings) {

    /** A value with both limits and nothing to warn of. */
    public static Estimate of(double estimate, double lower, double upper, String method, String source) {
        return new Estimate(estimate, lower, upper, method, source, List.of());
    }

    static Estimate undefined(String method, String source, String reason) {
        return withoutLimits(null, method, source, reason);
    }

    static Estimate withoutLimits(Double estimate, String method, String source, String reason) {
        return new Estimate(estimate, null, null, method, source, List.of(reason));
    }

    /** exp(log -/+ z se): limits symmetric on the log scale. */
    static Estimate onLogScale(double estimate, double standardErrorLog, double z, String method, String source) {
        double factor = Math.exp(z * standardErrorLog);
        return of(estimate, estimate / factor, estimate * factor, method, source);
    }
}
