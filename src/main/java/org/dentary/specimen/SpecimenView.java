package org.dentary.specimen;

import java.time.Instant;

/**
 * A specimen as it stands.
 *
 * @param kit kit its label is bound to today
 * @param kitPrinted kit its label was printed for; another one where a swap was put right
 * @param part what the label was printed for
 * @param parent code of the specimen it was cut from, or null
 * @param version changes with every correction
 */
public record SpecimenView(
        String code,
        String kit,
        String kitPrinted,
        String part,
        String parent,
        String tissue,
        String tissueText,
        String side,
        String condition,
        String preservation,
        Instant collectedAt,
        String collectedBy,
        boolean archived,
        String recordedBy,
        Instant recordedAt,
        int version) {}
