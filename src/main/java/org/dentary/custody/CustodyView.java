package org.dentary.custody;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.dentary.custody.chain.Concerns;
import org.dentary.custody.discrepancy.DiscrepancyView;
import org.dentary.custody.event.CustodyEventView;
import org.dentary.custody.evidence.ErasedText;
import org.dentary.custody.identity.IdentityExceptionView;

/**
 * Who has a specimen or box now, how it came there, and what is wrong with that.
 *
 * @param code label code
 * @param part what the label is for
 * @param kit the kit the label is bound to
 * @param zone time zone of the station that the label was issued to
 * @param custodian who has it now
 * @param place where it is, or null if nobody said
 * @param since when the present custody began
 * @param verified whether stored bytes, hashes and links still agree
 * @param differences what does not, one sentence each
 * @param hoursSinceCollection one decimal
 * @param lost whether it is reported lost
 * @param destroyed whether it is destroyed
 * @param onHold whether a hold is in force
 * @param offer the open offer, or null
 * @param discrepancies open ones about this code
 * @param settled discrepancies about this code that are settled
 * @param identityExceptions of its label, and of what it was cut from, oldest first; they stay for ever
 * @param events in the order of recording
 */
public record CustodyView(
        String code,
        String part,
        String kit,
        String zone,
        String custodian,
        String custodianKind,
        String custodianName,
        String place,
        String placeName,
        Instant since,
        boolean verified,
        List<String> differences,
        Instant collectedAt,
        BigDecimal hoursSinceCollection,
        String box,
        boolean lost,
        boolean destroyed,
        boolean onHold,
        Offer offer,
        List<Concerns.Gap> gaps,
        List<Concerns.LateEntry> lateEntries,
        List<Concerns.Excursion> excursions,
        List<Concerns.SealMismatch> sealMismatches,
        List<DiscrepancyView> discrepancies,
        List<DiscrepancyView> settled,
        List<IdentityExceptionView> identityExceptions,
        List<CustodyEventView> events) {

    /** An offer that nobody has answered yet. */
    public record Offer(UUID handOver, String to, String toName, Instant offeredAt, boolean overdue) {}

    /** The erasure of the words that said where it is; null where a place is known, or nobody said one. */
    @JsonIgnore
    public ErasedText placeErased() {
        return place != null
                ? null
                : events.stream()
                        .flatMap(event -> event.erasures().stream())
                        .filter(erased -> erased.field().equals("placeText"))
                        .reduce((first, second) -> second)
                        .orElse(null);
    }

    /** Whether a reader must look closer. */
    public boolean isTroubled() {
        return !verified
                || lost
                || !gaps.isEmpty()
                || !lateEntries.isEmpty()
                || !excursions.isEmpty()
                || !sealMismatches.isEmpty()
                || !discrepancies.isEmpty()
                || !identityExceptions.isEmpty()
                || (offer != null && offer.overdue());
    }
}
