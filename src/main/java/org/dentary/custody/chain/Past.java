package org.dentary.custody.chain;

import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * How things stood at the moment of an act: for most codes that is now; for those whose chains already tell of later
 * things, the events in the order of happening decide.
 *
 * @param at the moment
 * @param chains events of the codes that have later ones already
 */
public record Past(Instant at, Map<String, List<Step>> chains) {

    /** Who held then, or null if nobody did. */
    public Holder holder(Head head) {
        List<Step> steps = chains.get(head.code());
        return steps == null ? head.holder() : CustodyRules.holderAt(steps, at).orElse(null);
    }

    /** How a code stands after custody moved then: what moved later still holds. */
    public Head moved(Head head, Holder to) {
        List<Step> steps = chains.get(head.code());
        boolean later = steps != null
                && CustodyRules.lastMove(steps)
                        .filter(move -> move.occurredAt().isAfter(at))
                        .isPresent();
        return later ? head : head.heldBy(to);
    }

    /** Whether a code's chain tells of later things already. */
    public boolean isPast(Head head) {
        return chains.containsKey(head.code());
    }
}
