package org.dentary.result.notification;

import java.time.Instant;
import java.util.UUID;

/** A try to tell somebody; {@code correctedBy} names the entry that replaced it, or null. */
public record AttemptView(
        UUID id,
        String outcome,
        String channel,
        String result,
        Boolean closes,
        Instant at,
        String note,
        UUID corrects,
        UUID correctedBy,
        String by,
        Instant recordedAt) {}
