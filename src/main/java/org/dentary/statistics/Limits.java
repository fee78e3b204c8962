package org.dentary.statistics;

/**
 * A lower and an upper confidence limit; both null where undefined, an unbounded upper one {@link Double#POSITIVE_INFINITY}.
 */
public record Limits(Double lower, Double upper) {

    public static final Limits UNDEFINED = new Limits(null, null);

    /** True when both limits have a value. */
    public boolean defined() {
        return lower != null && upper != null;
    }

    double width() {
        return upper - lower;
    }
}
