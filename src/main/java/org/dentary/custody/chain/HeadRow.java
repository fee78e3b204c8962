package org.dentary.custody.chain;

import java.time.Instant;
import java.util.UUID;

/** A row of {@code custody_head}. */
record HeadRow(
        String code,
        Integer sequence,
        String hash,
        String custodianKind,
        String custodian,
        String box,
        String place,
        String offered,
        String lastKind,
        Instant lastOccurredAt,
        Instant collectedAt) {
    Head head() {
        return new Head(
                code,
                sequence,
                hash,
                new Holder(custodianKind, custodian),
                box,
                place,
                offered == null ? null : UUID.fromString(offered),
                lastKind,
                lastOccurredAt,
                collectedAt);
    }
}
