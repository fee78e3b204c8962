package org.dentary.plan;

import java.time.LocalDate;

/**
 * One kind of piece that a laboratory accepts for one method.
 *
 * @param side {@code LEFT}, {@code RIGHT} ..., or null for any
 * @param maxDays most days from collection to arrival, or null for no limit
 * @param maxDaysKept most days in the present preservation, or null for no limit
 * @param minimumAge youngest age class taken, or null for any
 * @param unknownAgeStops whether a piece of unknown age is not taken
 * @param container what it must be in, in the laboratory's words, or null
 * @param inForceTo last day, inclusive, or null for open
 */
public record AcceptanceView(
        String laboratory,
        String method,
        String tissue,
        String preservation,
        String side,
        Integer maxDays,
        Integer maxDaysKept,
        String minimumAge,
        Boolean unknownAgeStops,
        String container,
        LocalDate inForceFrom,
        LocalDate inForceTo) {}
