package org.dentary.custody.chain;

import java.math.BigDecimal;
import java.time.Instant;

/** What a chain shows that a reader must not miss. Nothing here is stored: all of it is derived from the events. */
public final class Concerns {
    private Concerns() {}

    /** Why a custodian is not known. */
    public enum Why {
        /** The giver says to have given, the receiver to have received only later. */
        BETWEEN_GIVING_AND_RECEIVING,
        /** Delivered, but counted only later. */
        BETWEEN_DELIVERY_AND_COUNT,
        /** Reported lost. */
        LOST,
        /** By the times given, the giver did not hold it. */
        GIVEN_BY_SOMEBODY_ELSE
    }

    /**
     * A stretch in which nobody is known to have held it.
     *
     * @param from its beginning
     * @param to its end, or null while it lasts
     * @param hours its length so far
     * @param why what makes it a gap
     * @param sequence the event that ends it, or that begins it while it lasts
     */
    public record Gap(Instant from, Instant to, BigDecimal hours, Why why, int sequence) {}

    /**
     * An entry made long after what it tells, before something already recorded, or from paper.
     *
     * @param hours from happening to entry
     */
    public record LateEntry(int sequence, CustodyKind kind, Instant occurredAt, Instant enteredAt, BigDecimal hours) {}

    /** A temperature outside what the preservation allows; a limit is null where there is none. */
    public record Excursion(
            int sequence,
            Instant occurredAt,
            BigDecimal temperatureCelsius,
            BigDecimal lowestCelsius,
            BigDecimal highestCelsius) {}

    /** A tamper seal that was not the one put on; null where there was none. */
    public record SealMismatch(int sequence, Instant occurredAt, String expected, String found) {}
}
