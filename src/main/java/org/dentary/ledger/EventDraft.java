package org.dentary.ledger;

import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

/**
 * An event before it has a place in its chain.
 *
 * @param id the event's own id; a client may choose it
 * @param chain the code whose chain it joins
 * @param kind what happened, in UPPER_SNAKE
 * @param occurredAt when it happened; microseconds, finer parts are cut off
 * @param enteredAt when it was entered on the device
 * @param receivedAt when the service received it
 * @param zone the IANA time zone of the place, written beside the UTC times
 * @param actor opaque id of who did it
 * @param counterparty opaque id of the other side, or null
 * @param place opaque id of the place, or null
 * @param handOver what ties events of several chains into one act, or null
 * @param fields further plain values as {@link CanonicalJson#of} takes them; what must be erasable as {@link Redacted}
 */
public record EventDraft(
        UUID id,
        String chain,
        String kind,
        Instant occurredAt,
        Instant enteredAt,
        Instant receivedAt,
        ZoneId zone,
        String actor,
        String counterparty,
        String place,
        UUID handOver,
        Map<String, Object> fields) {

    /** @throws IllegalArgumentException if chain, kind or actor is blank */
    public EventDraft {
        Objects.requireNonNull(id, "id");
        chain = filled("chain", chain);
        kind = filled("kind", kind);
        actor = filled("actor", actor);
        occurredAt = occurredAt.truncatedTo(ChronoUnit.MICROS);
        enteredAt = enteredAt.truncatedTo(ChronoUnit.MICROS);
        receivedAt = receivedAt.truncatedTo(ChronoUnit.MICROS);
        Objects.requireNonNull(zone, "zone");
        Map<String, Object> kept = new LinkedHashMap<>(fields);
        kept.values().removeIf(Objects::isNull);
        fields = Collections.unmodifiableMap(kept);
    }

    /** A draft with a random id and nothing optional; add the rest with the methods below. */
    public static EventDraft of(
            String chain,
            String kind,
            Instant occurredAt,
            Instant enteredAt,
            Instant receivedAt,
            ZoneId zone,
            String actor) {
        return new EventDraft(
                UUID.randomUUID(),
                chain,
                kind,
                occurredAt,
                enteredAt,
                receivedAt,
                zone,
                actor,
                null,
                null,
                null,
                Map.of());
    }

    /** The same under an id of the client's. */
    public EventDraft withId(UUID chosen) {
        return new EventDraft(
                chosen,
                chain,
                kind,
                occurredAt,
                enteredAt,
                receivedAt,
                zone,
                actor,
                counterparty,
                place,
                handOver,
                fields);
    }

    /** The same on another code's chain under a fresh id: one act, one event per code. */
    public EventDraft onChain(String code) {
        return new EventDraft(
                UUID.randomUUID(),
                code,
                kind,
                occurredAt,
                enteredAt,
                receivedAt,
                zone,
                actor,
                counterparty,
                place,
                handOver,
                fields);
    }

    /** The same with the other side; null for none. */
    public EventDraft withCounterparty(String other) {
        return new EventDraft(
                id, chain, kind, occurredAt, enteredAt, receivedAt, zone, actor, other, place, handOver, fields);
    }

    /** The same at a place; null for none. */
    public EventDraft atPlace(String where) {
        return new EventDraft(
                id, chain, kind, occurredAt, enteredAt, receivedAt, zone, actor, counterparty, where, handOver, fields);
    }

    /** The same as part of an act over several chains; null for none. */
    public EventDraft withHandOver(UUID act) {
        return new EventDraft(
                id, chain, kind, occurredAt, enteredAt, receivedAt, zone, actor, counterparty, place, act, fields);
    }

    /** The same with one more field; a null value adds nothing. */
    public EventDraft with(String name, Object value) {
        Map<String, Object> more = new LinkedHashMap<>(fields);
        more.put(name, value);
        return new EventDraft(
                id, chain, kind, occurredAt, enteredAt, receivedAt, zone, actor, counterparty, place, handOver, more);
    }

    /** The redacted fields by name; one inside a list or map is named by its path, joined by dots. */
    Map<String, Redacted> redacted() {
        Map<String, Redacted> found = new LinkedHashMap<>();
        fields.forEach((name, value) -> collect(name, value, found));
        return found;
    }

    private static void collect(String name, Object value, Map<String, Redacted> found) {
        if (value instanceof Redacted redacted) {
            found.put(name, redacted);
        } else if (value instanceof Map<?, ?> map) {
            map.forEach((inner, one) -> collect(name + "." + inner, one, found));
        } else if (value instanceof Collection<?> values) {
            int index = 0;
            for (Object one : values) {
                collect(name + "." + index++, one, found);
            }
        }
    }

    private static String filled(String name, String value) {
        if (value == null || value.isBlank()) {
            throw new IllegalArgumentException("an event needs its " + name);
        }
        return value;
    }
}
