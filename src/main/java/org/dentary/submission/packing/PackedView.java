package org.dentary.submission.packing;

import java.time.Instant;
import java.time.LocalDate;

/**
 * A specimen in a submission, with what a manifest says of it.
 *
 * @param collectedOn the station's day
 * @param ageClass the age that stands, UNKNOWN where none does
 * @param overrideReason why it went although the laboratory's rules say otherwise, or null
 * @param receipt {@code RECEIVED}, {@code SHORT}, {@code DAMAGED}, {@code RECALLED} or null until told
 * @param receiptSource who says that it arrived: {@code SCAN}, {@code LABORATORY_LIST} or {@code RESULT}; else null
 * @param identityException whether its identity was accepted by a signed exception; every paper says so
 */
public record PackedView(
        String code,
        String box,
        String tissue,
        String side,
        String preservation,
        LocalDate collectedOn,
        String species,
        String ageClass,
        String sex,
        String unit,
        Instant packedAt,
        String packedBy,
        String overrideReason,
        String receipt,
        Instant receivedAt,
        String receiptSource,
        Boolean identityException) {}
