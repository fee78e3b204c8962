package org.dentary.statistics;

import java.util.Collection;

/** The checks every function makes before it computes. Each returns quietly or throws {@link OutOfDomain}. */
public final class Domain {

    /** More animals than any herd has; keeps sums within {@code int} and every answer within a second. */
    public static final int MOST = 10_000_000;

    private Domain() {}

    /** A count in [0, 10,000,000]. */
    public static void count(String field, int given) {
        atLeast(0, field, given);
        if (given > MOST) {
            throw new OutOfDomain(field, given, "must not exceed 10,000,000");
        }
    }

    /** A count in [{@code minimum}, any]. */
    public static void atLeast(int minimum, String field, int given) {
        if (given < minimum) {
            throw new OutOfDomain(field, given, "must be " + minimum + " or more");
        }
    }

    /** A count in [any, {@code maximum}]; {@code maximumIs} names what sets the bound. */
    public static void atMost(int maximum, String maximumIs, String field, int given) {
        if (given > maximum) {
            throw new OutOfDomain(field, given, "must not exceed " + maximumIs + " (" + maximum + ")");
        }
    }

    /** Counts of a proportion: {@code 0 <= detected <= tested <= 10,000,000}. */
    public static void counts(String detectedField, int detected, String testedField, int tested) {
        count(testedField, tested);
        atLeast(0, detectedField, detected);
        atMost(tested, testedField, detectedField, detected);
    }

    /** A confidence level in (0, 1), far enough from both ends that 1 less it is too. */
    public static void confidence(double given) {
        if (!isConfidence(given)) {
            throw new OutOfDomain("confidence", given, "must be a fraction above 0 and below 1, such as 0.95");
        }
    }

    /** Whether a number is a {@link #confidence}. */
    public static boolean isConfidence(double given) {
        return given > 0 && given < 1 && 1 - given < 1;
    }

    /** A probability in [0, 1]. */
    public static void probability(String field, double given) {
        if (!(given >= 0 && given <= 1)) {
            throw new OutOfDomain(field, given, "must be a fraction from 0 to 1");
        }
    }

    /** A probability in (0, 1]. */
    public static void positiveProbability(String field, double given) {
        if (!(given > 0 && given <= 1)) {
            throw new OutOfDomain(field, given, "must be a fraction above 0 and up to 1");
        }
    }

    /** A finite number. */
    public static void finite(String field, double given) {
        if (!Double.isFinite(given)) {
            throw new OutOfDomain(field, given, "must be a finite number");
        }
    }

    /** A finite number of 0 or more. */
    public static void notBelowZero(String field, double given) {
        finite(field, given);
        if (given < 0) {
            throw new OutOfDomain(field, given, "must be 0 or more");
        }
    }

    /** At least one row. */
    public static void notEmpty(String field, Collection<?> given) {
        if (given == null || given.isEmpty()) {
            throw new OutOfDomain(field, given == null ? "null" : "[]", "must have at least one row");
        }
    }
}
