package org.dentary.plan;

import java.time.LocalDate;

/**
 * A surveillance year.
 *
 * @param startsOn first day, inclusive
 * @param endsOn last day, inclusive
 * @param state {@code DRAFT}, {@code OPEN} (takes animals in) or {@code CLOSED}
 */
public record SeasonView(String code, String name, LocalDate startsOn, LocalDate endsOn, String state) {
    /** Whether the day lies in it. */
    public boolean contains(LocalDate day) {
        return !day.isBefore(startsOn) && !day.isAfter(endsOn);
    }
}
