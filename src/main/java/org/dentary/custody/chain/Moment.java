package org.dentary.custody.chain;

import java.time.Instant;
import java.time.ZoneId;
import org.dentary.ledger.EventDraft;
import org.dentary.ledger.Redacted;

/**
 * The frame of one act, the same for every code it touches.
 *
 * @param occurredAt when it happened
 * @param enteredAt when it was entered on the device
 * @param receivedAt when the service received it
 * @param zone time zone of the place
 * @param actor who records it
 * @param place where, or {@link Place#NOT_SAID}
 * @param reason free text or null; only its digest enters the ledger
 * @param late whether it was entered beyond the plan's hours, or from paper
 */
public record Moment(
        Instant occurredAt,
        Instant enteredAt,
        Instant receivedAt,
        ZoneId zone,
        String actor,
        Place place,
        Redacted reason,
        boolean late) {

    /** An event of this act on a code's chain; an entry older than what is recorded already is late too. */
    public EventDraft draft(CustodyKind kind, Head head) {
        return draft(kind, head.code(), late || occurredAt.isBefore(head.lastOccurredAt()));
    }

    /** The first event of a chain. */
    public EventDraft first(CustodyKind kind, String code) {
        return draft(kind, code, late);
    }

    /** The same act, entered from a paper form: always late. */
    public Moment onPaper() {
        return new Moment(occurredAt, enteredAt, receivedAt, zone, actor, place, reason, true);
    }

    private EventDraft draft(CustodyKind kind, String code, boolean isLate) {
        return EventDraft.of(code, kind.name(), occurredAt, enteredAt, receivedAt, zone, actor)
                .atPlace(place.code())
                .with("placeText", place.words() == null ? null : Redacted.of(place.words()))
                .with("late", isLate ? Boolean.TRUE : null)
                .with("reason", reason);
    }
}
