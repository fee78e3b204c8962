package org.dentary.submission;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;

/**
 * A submission leaves.
 *
 * @param carrier who carries it, free text or a party of the plan
 * @param waybill the carrier's number
 * @param overrideReason why tubes go although the laboratory's rules came to say otherwise since they were packed; printed
 *     on the manifest beside each of them
 * @param shipper who classified and marked the parcel, or null if nobody said
 */
public record Dispatch(
        @NotNull(message = "is required: when the carrier took it, with offset")
        OffsetDateTime occurredAt,

        @NotBlank(message = "is required: who carries it") @Size(max = 120, message = "takes at most 120 characters")
        String carrier,

        @Size(max = 120, message = "takes at most 120 characters")
        String waybill,

        @Size(max = 120, message = "takes at most 120 characters")
        String shipper,

        @Size(max = 300, message = "takes at most 300 characters")
        String overrideReason,

        OffsetDateTime enteredAt,

        @Size(max = 300, message = "takes at most 300 characters")
        String reason) {}
