package org.dentary.custody.box;

import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;

/**
 * Put into a box, or take out.
 *
 * @param occurredAt left out: now
 * @param enteredAt when that was entered on the device; left out: when the service received it
 * @param reason needed when entered beyond the plan's hours
 */
public record Packing(
        OffsetDateTime occurredAt,
        OffsetDateTime enteredAt,

        @Size(max = 2000, message = "a reason has up to 2000 characters")
        String reason) {
    /** Now, without a reason. */
    public static final Packing NOW = new Packing(null, null, null);
}
