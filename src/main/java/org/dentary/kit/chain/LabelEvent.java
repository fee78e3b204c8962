package org.dentary.kit.chain;

import java.time.Instant;
import java.util.UUID;

/**
 * Something that happened to a label as a label, read from its block's chain.
 *
 * @param sequence position in the block's chain, from 1
 * @param kind what happened
 * @param words the same in plain words
 * @param zone time zone of the station
 * @param actorName who recorded it
 * @param place station that the block was issued to, or null
 * @param personName who answers for the block, or null
 * @param labels how many labels were issued with it, or null where it is not about issuing
 * @param reason why it was voided or printed again; null where none was asked for, or it was erased
 * @param printNumber which print it was, 2 for the first after the block's own, or null
 * @param hash SHA-256 of the recorded bytes
 */
public record LabelEvent(
        int sequence,
        UUID id,
        LabelEventKind kind,
        String words,
        Instant occurredAt,
        String zone,
        String actorName,
        String place,
        String placeName,
        String personName,
        Integer labels,
        String reason,
        Integer printNumber,
        String hash) {}
