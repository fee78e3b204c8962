package org.dentary.custody.chain;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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

    /**
     * How a code stands after it was put into a box or taken out then. Where it moved or was packed again later, that still
     * holds.
     *
     * @param box null: out of the box
     * @param place where the box was; null keeps the place
     */
    public Head packed(Head head, String box, String place) {
        boolean later = chains.getOrDefault(head.code(), List.of()).stream()
                .filter(step -> step.occurredAt().isAfter(at))
                .anyMatch(step -> step.custodian() != null
                        || step.kind() == CustodyKind.PACKED
                        || step.kind() == CustodyKind.UNPACKED);
        return later ? head : at(head.in(box), place);
    }

    /** Whether it was destroyed by then. */
    boolean isDestroyed(Head head) {
        List<Step> steps = chains.get(head.code());
        return head.isDestroyed()
                && (steps == null || DestructionRules.destroyedBy(steps, at).isPresent());
    }

    /** Who recorded a destruction that came later, where it would have been with another than before, had custody moved then. */
    Optional<String> destroyedLaterBy(Head head) {
        List<Step> steps = chains.getOrDefault(head.code(), List.of());
        boolean movedSince = CustodyRules.lastMove(steps)
                .filter(move -> move.occurredAt().isAfter(at))
                .isPresent();
        return movedSince ? Optional.empty() : DestructionRules.destroyed(steps).map(Step::actor);
    }

    /** Whether a code's chain tells of later things already. */
    public boolean isPast(Head head) {
        return chains.containsKey(head.code());
    }
}
