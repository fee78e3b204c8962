package org.dentary.custody.chain;

import org.dentary.ledger.EventDraft;

/**
 * An event about to be appended, and how the code stands after it.
 *
 * @param draft the event
 * @param next the chain's end with custodian, place, box and offer as after the event; position and hash are filled in
 */
public record Planned(EventDraft draft, Head next) {

    /** An event that gives custody; the event says to whom. */
    public static Planned moving(EventDraft draft, Holder to, Head next) {
        return new Planned(draft.with("custodianKind", to.kind()).with("custodian", to.code()), next);
    }

    /** The event, naming who gave; null: nobody held it. */
    public static EventDraft from(EventDraft draft, Holder giver) {
        return giver == null ? draft : draft.with("fromKind", giver.kind()).with("from", giver.code());
    }
}
