package org.dentary.custody.chain;

import java.math.BigDecimal;
import java.time.Duration;

/**
 * The plan's limits for custody.
 *
 * @param late from this long after it happened, an entry is late
 * @param gap from this long without a known custodian, it is a gap
 * @param unanswered from this long without acceptance, an offer is overdue
 * @param skew how far two clocks may differ
 * @param discrepancyDays days until a discrepancy is due
 */
public record Limits(Duration late, Duration gap, Duration unanswered, Duration skew, int discrepancyDays) {

    /**
     * The temperatures in which a specimen keeps.
     *
     * @param lowestCelsius inclusive, or null for none
     * @param highestCelsius inclusive, or null for none
     */
    public record Temperatures(BigDecimal lowestCelsius, BigDecimal highestCelsius) {
        public static final Temperatures ANY = new Temperatures(null, null);

        public boolean hold(BigDecimal celsius) {
            return (lowestCelsius == null || celsius.compareTo(lowestCelsius) >= 0)
                    && (highestCelsius == null || celsius.compareTo(highestCelsius) <= 0);
        }
    }
}
