package org.dentary.result.incident;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * An incident whole.
 *
 * @param state {@code OPEN} or {@code CLOSED}
 * @param closedAs {@code CONFIRMED} or {@code NOT_CONFIRMED}, or null
 * @param timeZone zone of the first animal's station, in which the page tells times
 * @param sameTable deer sampled at the same station on the same day
 * @param changes what its steps were before each change, newest first
 */
public record IncidentView(
        Head head,
        List<Animal> animals,
        List<Step> steps,
        List<Telling> tellings,
        List<SameTable> sameTable,
        List<Change> changes) {
    public record Head(
            String id,
            String disease,
            String diseaseName,
            String unit,
            String unitName,
            String season,
            String state,
            Instant openedAt,
            String closedAs,
            String closingNote,
            String closedBy,
            Instant closedAt,
            Long settled,
            Long steps,
            String timeZone,
            Integer version) {}

    public record Animal(
            String kit,
            String derivedOutcome,
            String outcome,
            String explanation,
            String station,
            LocalDate diedOn,
            String unitName) {}

    public record Step(String kind, String owner, LocalDate dueOn, String state, String note, Integer version) {
        /** What is to be done. */
        public String words() {
            return IncidentStep.valueOf(kind).words();
        }
    }

    public record Telling(Integer position, String whom, Instant toldAt, String toldBy, String note) {}

    public record SameTable(String kit, String station, LocalDate sampledOn, String sampledBy) {}

    public record Change(Instant at, String actor, String kind, String was) {}
}
