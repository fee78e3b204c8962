package org.dentary.custody.chain;

import java.time.Instant;
import java.util.Set;
import java.util.UUID;

/**
 * Where a code's chain stands: what the next event is judged by.
 *
 * @param code the specimen's or box's label code
 * @param sequence position of the last event, from 1
 * @param hash of the last event
 * @param holder who has custody
 * @param box code of the box it lies in, or null
 * @param place where it is, or null
 * @param offered the open hand-over it is offered in, or null
 * @param lastKind of the last event in the order of recording
 * @param lastOccurredAt latest time of happening on the chain
 * @param collectedAt when custody began
 */
public record Head(
        String code,
        int sequence,
        String hash,
        Holder holder,
        String box,
        String place,
        UUID offered,
        String lastKind,
        Instant lastOccurredAt,
        Instant collectedAt) {

    /** Whether its last event says that it is no more. */
    public boolean isDestroyed() {
        return CustodyKind.DESTROYED.name().equals(lastKind);
    }

    Head heldBy(Holder next) {
        return next == null ? this : with(next, box, place, offered);
    }

    /** The same in a box, or in none where that is null. */
    public Head in(String nextBox) {
        return with(holder, nextBox, place, offered);
    }

    /** Out of its box, unless the box is among what moves too. */
    public Head apartFrom(Set<String> moving) {
        return box == null || moving.contains(box) ? this : in(null);
    }

    /** Null keeps the place. */
    public Head at(String nextPlace) {
        return nextPlace == null ? this : with(holder, box, nextPlace, offered);
    }

    /** The same as offered in a hand-over, or in none where that is null. */
    public Head offeredIn(UUID handOver) {
        return with(holder, box, place, handOver);
    }

    Head after(int nextSequence, String nextHash, String kind, Instant occurredAt) {
        Instant latest = occurredAt.isAfter(lastOccurredAt) ? occurredAt : lastOccurredAt;
        return new Head(code, nextSequence, nextHash, holder, box, place, offered, kind, latest, collectedAt);
    }

    private Head with(Holder nextHolder, String nextBox, String nextPlace, UUID nextOffered) {
        return new Head(
                code,
                sequence,
                hash,
                nextHolder,
                nextBox,
                nextPlace,
                nextOffered,
                lastKind,
                lastOccurredAt,
                collectedAt);
    }
}
