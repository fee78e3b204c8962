package org.dentary.specimen;

import java.time.Instant;

/**
 * A re-attribution; both animals show it for ever.
 *
 * @param state {@code ASKED}, {@code CONFIRMED} or {@code REFUSED}
 * @param decidedBy who confirmed or refused it, or null
 * @param decisionReason why it was refused, or null
 */
public record ReAttributionView(
        String id,
        String code,
        String fromKit,
        String toKit,
        String reason,
        String evidence,
        String askedBy,
        Instant askedAt,
        String state,
        String decidedBy,
        Instant decidedAt,
        String decisionReason) {}
