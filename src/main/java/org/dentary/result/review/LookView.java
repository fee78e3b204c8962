package org.dentary.result.review;

import java.time.Instant;

/**
 * A look at an outcome.
 *
 * @param review what was odd about it
 * @param since of the outcome as it was looked at
 * @param current whether the outcome reads so still
 */
public record LookView(
        String id,
        String kit,
        String disease,
        String review,
        String note,
        String lookedBy,
        Instant lookedAt,
        Instant since,
        Boolean current) {}
