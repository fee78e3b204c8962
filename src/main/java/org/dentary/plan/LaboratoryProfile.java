package org.dentary.plan;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * When and how a laboratory takes parcels. Nothing here refuses anything; the laboratory's current instructions stand above
 * it.
 *
 * @param receivesOn weekdays on which parcels are taken, Monday first; never empty
 * @param cutOff latest hour of arrival on the laboratory's clock, or null
 * @param temperature how cold parcels must be, in the laboratory's words, or null
 * @param pieces how many pieces, and how packed, or null
 * @param paperwork what must come with the parcel, or null
 * @param handling its handling words, or null
 * @param closures days in the coming months on which it takes nothing, in order
 */
public record LaboratoryProfile(
        String laboratory,
        LocalDate inForceFrom,
        LocalDate inForceTo,
        List<DayOfWeek> receivesOn,
        String cutOff,
        String temperature,
        String pieces,
        String paperwork,
        String handling,
        List<Closure> closures) {
    private static final int FAR = 60;

    /** A day on which nothing is taken, and why. */
    public record Closure(LocalDate day, String name) {}

    /** The first day after a day on which a parcel is taken; empty where none is in sixty days. */
    public java.util.Optional<LocalDate> nextReceiving(LocalDate after) {
        Set<LocalDate> closed = closures.stream().map(Closure::day).collect(Collectors.toSet());
        return after.plusDays(1)
                .datesUntil(after.plusDays(FAR))
                .filter(day -> receivesOn.contains(day.getDayOfWeek()) && !closed.contains(day))
                .findFirst();
    }

    /** Why a parcel is not taken on a day; empty where it is. */
    public java.util.Optional<String> closedOn(LocalDate day) {
        return closures.stream()
                .filter(closure -> closure.day().equals(day))
                .map(Closure::name)
                .findFirst()
                .or(() -> receivesOn.contains(day.getDayOfWeek())
                        ? java.util.Optional.empty()
                        : java.util.Optional.of("no parcels on this weekday"));
    }
}
