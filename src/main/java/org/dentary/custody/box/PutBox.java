package org.dentary.custody.box;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;

/**
 * Open a box, or move it with all that is in it.
 *
 * @param place a station, a store or words
 * @param occurredAt left out: now
 * @param enteredAt when that was entered on the device; left out: when the service received it
 * @param reason needed when entered beyond the plan's hours
 */
public record PutBox(
        @NotBlank(message = "say where the box is: a station, a store or words")
        @Size(max = 200, message = "a place has up to 200 characters")
        String place,

        OffsetDateTime occurredAt,
        OffsetDateTime enteredAt,

        @Size(max = 2000, message = "a reason has up to 2000 characters")
        String reason) {}
