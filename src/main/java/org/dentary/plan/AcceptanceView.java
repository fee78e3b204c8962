package org.dentary.plan;

import java.time.LocalDate;

/**
 * One kind of piece that a laboratory accepts for one method.
 *
 * @param side {@code LEFT}, {@code RIGHT} ..., or null for any
 * @param maxDays most days from collection to arrival, or null for no limit
 * @param inForceTo last day, inclusive, or null for open
 */
public record AcceptanceView(
        String laboratory,
        String method,
        String tissue,
        String preservation,
        String side,
        Integer maxDays,
        LocalDate inForceFrom,
        LocalDate inForceTo) {}
