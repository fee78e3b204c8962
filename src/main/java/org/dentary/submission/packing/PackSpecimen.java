package org.dentary.submission.packing;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;

/**
 * A specimen to pack.
 *
 * @param box code of the box it lies in, or null
 * @param overrideReason why it goes although the laboratory's rules say otherwise; printed on the manifest
 */
public record PackSpecimen(
        @NotNull(message = "is required: when it was packed, with offset")
        OffsetDateTime packedAt,

        String box,

        @Size(max = 300, message = "takes at most 300 characters")
        String overrideReason,

        OffsetDateTime enteredAt,

        @Size(max = 300, message = "takes at most 300 characters")
        String reason) {}
