package org.dentary.custody.chain;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What may be recorded about the time before a destruction, and what can not have been destroyed yet. */
public final class DestructionRules {
    private static final Set<CustodyKind> NEED_TISSUE =
            Set.of(CustodyKind.SPLIT, CustodyKind.TESTED, CustodyKind.DESTROYED);

    private DestructionRules() {}

    /** The destruction that had happened at a moment, that very moment included; empty where it was still there. */
    static Optional<Step> destroyedBy(List<Step> steps, Instant at) {
        return destroyed(steps).filter(step -> !step.occurredAt().isAfter(at));
    }

    /** The first destruction; empty where there was none. */
    static Optional<Step> destroyed(List<Step> steps) {
        return steps.stream()
                .filter(step -> step.kind() == CustodyKind.DESTROYED)
                .min(CustodyRules.AS_IT_HAPPENED);
    }

    /** What happened after a moment that cannot have happened to what was destroyed by then, the first of it. */
    public static Optional<Step> outlives(List<Step> steps, Instant at) {
        return steps.stream()
                .filter(step -> step.occurredAt().isAfter(at))
                .filter(step -> step.custodian() != null || NEED_TISSUE.contains(step.kind()))
                .min(CustodyRules.AS_IT_HAPPENED);
    }
}
