package org.dentary.result.review;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;

/**
 * That a person looked at an outcome.
 *
 * @param since of the outcome as it was read: if it reads otherwise by now, nobody has looked at that yet
 * @param note what was found
 */
public record LookedAt(
        @NotBlank(message = "is required: the animal's kit") String kit,

        @NotBlank(message = "is required: the disease's code")
        String disease,

        @NotNull(message = "is required: since of the outcome, as the list tells it")
        OffsetDateTime since,

        @NotBlank(message = "is required: what was found, in a sentence")
        @Size(max = 500, message = "takes at most 500 characters")
        String note) {}
