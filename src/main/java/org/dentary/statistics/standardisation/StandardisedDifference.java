package org.dentary.statistics.standardisation;

import org.dentary.statistics.comparison.Estimate;

/** The difference of two independent standardised prevalences. */
public final class StandardisedDifference {
    private static final String METHOD =
            "Difference of two directly standardised prevalences, limits by variance recovery";
    private static final String SOURCE = "Zou & Donner 2008, Stat Med 27:1693-1702";

    private StandardisedDifference() {}

    /**
     * First minus second: L = D - sqrt((e1 - l1)^2 + (u2 - e2)^2) and U likewise, from each one's own limits at the same
     * level. The two must be standardised to the same reference herd and rest on different animals; that is for the caller.
     */
    public static Estimate of(Standardised first, Standardised second) {
        double difference = first.estimate() - second.estimate();
        return Estimate.of(
                difference,
                difference - Math.hypot(first.estimate() - first.lower(), second.upper() - second.estimate()),
                difference + Math.hypot(first.upper() - first.estimate(), second.estimate() - second.lower()),
                METHOD,
                SOURCE);
    }
}
