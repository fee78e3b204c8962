package org.dentary.custody.chain;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;

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

    /**
     * How a code stands after custody moved then. Where it moved again later, that still holds: its custodian, its place and
     * the box that it lies in.
     *
     * @param place where it then was; null keeps the place
     * @param moving all codes that moved: a box among them keeps what lies in it
     */
    public Head moved(Head head, Holder to, String place, Set<String> moving) {
        List<Step> steps = chains.get(head.code());
        boolean later = steps != null
                && CustodyRules.lastMove(steps)
                        .filter(move -> move.occurredAt().isAfter(at))
                        .isPresent();
        return later ? head : head.heldBy(to).at(place).apartFrom(moving);
    }

    /** How a code stands after something happened to it there then, in the same custody; what happened later still holds. */
    public Head at(Head head, String place) {
        return isPast(head) ? head : head.at(place);
    }

    /** Whether a code's chain tells of later things already. */
    public boolean isPast(Head head) {
        return chains.containsKey(head.code());
    }
}
