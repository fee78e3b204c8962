package org.dentary.submission;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import java.util.List;

/**
 * What comes back after it was sent.
 *
 * @param codes codes that come back; null: everything that was not counted in
 * @param occurredAt when they were taken back
 * @param reason why; kept in the ledger
 */
public record Recall(
        List<@NotNull(message = "is empty; scan the tube's code") String> codes,

        @NotNull(message = "is required: when they were taken back, with offset")
        OffsetDateTime occurredAt,

        @NotBlank(message = "is required: why they come back, such as: addressed to the wrong laboratory")
        @Size(max = 300, message = "takes at most 300 characters")
        String reason,

        OffsetDateTime enteredAt) {}
