package org.dentary.custody;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import org.dentary.custody.chain.Concerns;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.Holder;
import org.dentary.custody.discrepancy.DiscrepancyView;
import org.dentary.custody.event.CustodyEventView;

/**
 * A chain as those see it who may not know what a laboratory found: up to its arrival at the first laboratory. The arrival
 * itself, with its seal and its gap, was recorded before anything could be found and tells nothing. That tissue went on
 * to another, or what came of it on that way, would tell of a suspect before it is released.
 */
final class Veil {
    private Veil() {}

    /**
     * The chain with that and when something was recorded at the laboratory, not what; the same where none has had it.
     *
     * @param laboratories codes of the plan's; one has it from its count on, or since it was handed over or forwarded to it
     */
    static CustodyView over(CustodyView whole, Set<String> laboratories) {
        Optional<CustodyEventView> received = whole.events().stream()
                .filter(event -> event.kind().equals(CustodyKind.RECEIVED.name())
                        || event.custodian() != null && laboratories.contains(event.custodian()))
                .findFirst();
        if (received.isEmpty()) {
            return whole;
        }
        CustodyEventView arrival = received.get();
        return new CustodyView(
                whole.code(),
                whole.part(),
                whole.kit(),
                whole.zone(),
                arrival.custodian(),
                Holder.PARTY,
                arrival.custodianName(),
                arrival.place(),
                arrival.placeName(),
                arrival.occurredAt(),
                whole.verified(),
                whole.differences(),
                whole.collectedAt(),
                whole.hoursSinceCollection(),
                null,
                whole.lost(),
                whole.destroyed(),
                false,
                null,
                until(arrival, whole.gaps(), Concerns.Gap::sequence),
                until(arrival, whole.lateEntries(), Concerns.LateEntry::sequence),
                until(arrival, whole.excursions(), Concerns.Excursion::sequence),
                until(arrival, whole.sealMismatches(), Concerns.SealMismatch::sequence),
                ofTheWay(arrival, whole.discrepancies()),
                ofTheWay(arrival, whole.settled()),
                whole.identityExceptions(),
                whole.events().stream()
                        .map(event ->
                                event.sequence() > arrival.sequence() && !event.isOfIdentity() ? event.veiled() : event)
                        .toList());
    }

    private static <T> List<T> until(CustodyEventView arrival, List<T> concerns, ToIntFunction<T> sequence) {
        return concerns.stream()
                .filter(one -> sequence.applyAsInt(one) <= arrival.sequence())
                .toList();
    }

    /** What did not add up on the way there or was opened by hand; not what did not on the way to another laboratory. */
    private static List<DiscrepancyView> ofTheWay(CustodyEventView arrival, List<DiscrepancyView> all) {
        return all.stream()
                .filter(one -> one.subject() == null
                        || one.subject().equals(String.valueOf(arrival.handOver()))
                        || one.openedAt().isBefore(arrival.receivedAt()))
                .toList();
    }
}
