package org.dentary.custody.event;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.dentary.custody.evidence.ErasedText;
import org.dentary.custody.evidence.EvidenceView;
import org.dentary.custody.handover.Signature;

/**
 * One event of a chain as people read it. Free texts that were erased, or are not for this reader, are null.
 *
 * @param sequence position in the chain, from 1, in the order of recording
 * @param kind what happened; {@code AT_LABORATORY} where what the laboratory does is not for this reader
 * @param words the same in plain words
 * @param occurredAt when it happened
 * @param enteredAt when it was entered on the device
 * @param receivedAt when the service received it
 * @param zone time zone of the place
 * @param actor who recorded it
 * @param counterparty the other side, or null
 * @param place where, or null if nobody said
 * @param from who gave custody away, or null where custody stayed
 * @param custodian who held afterwards, or null where custody stayed
 * @param relinquishedAt when the giver says to have given, or null
 * @param tamperSealBefore number of the seal that was on before, or null
 * @param tamperSeal number of the seal put on or found, or null
 * @param signedBy who signed on the giver's screen, or null
 * @param signature the strokes of that signature, see {@link Signature}, or null
 * @param late whether it was entered late, out of order or from paper
 * @param corrects sequence of the event that this one corrects, or null
 * @param correctedBy sequence of the event that corrects this one, or null
 * @param photos photographs that show it, oldest first; the recorded bytes hold their digests
 * @param erasures texts, names and signatures of it that were erased
 * @param hash SHA-256 of the recorded bytes
 * @param predecessor hash of the event before it
 */
public record CustodyEventView(
        int sequence,
        UUID id,
        String kind,
        String words,
        Instant occurredAt,
        Instant enteredAt,
        Instant receivedAt,
        String zone,
        String actor,
        String actorName,
        String counterparty,
        String counterpartyName,
        String place,
        String placeName,
        String from,
        String fromName,
        String custodian,
        String custodianName,
        Instant relinquishedAt,
        boolean late,
        String reason,
        BigDecimal temperatureCelsius,
        String sensor,
        String tamperSealBefore,
        String tamperSeal,
        String condition,
        String box,
        String otherCode,
        String carrier,
        String waybill,
        String signedBy,
        String signature,
        String paperForm,
        String evidence,
        String discrepancy,
        String outcome,
        Integer corrects,
        Integer correctedBy,
        UUID handOver,
        List<EvidenceView> photos,
        List<ErasedText> erasures,
        String hash,
        String predecessor) {

    /** Whether it tells of the specimen's identity, which everybody may know who may know the specimen. */
    @JsonIgnore
    public boolean isOfIdentity() {
        return kind.startsWith("IDENTITY_EXCEPTION");
    }

    /** What a reader without access to the laboratory's work sees of it: that and when, not what. */
    public CustodyEventView veiled() {
        return new CustodyEventView(
                sequence,
                id,
                "AT_LABORATORY",
                "recorded at the laboratory",
                occurredAt,
                enteredAt,
                receivedAt,
                zone,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                late,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                List.of(),
                List.of(),
                hash,
                predecessor);
    }
}
