package org.dentary.result.notification;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import java.util.UUID;

/**
 * A try to tell somebody.
 *
 * @param outcome what was told or was to be told: the outcome that is released now
 * @param note what the next person must know; no names and no numbers
 * @param corrects an entry of the same animal that this one replaces, or null
 */
public record RecordAttempt(
        @NotBlank(message = "is required: the released outcome as it was read")
        String outcome,

        @NotNull(message = "is required: PHONE, IN_PERSON, LETTER or MESSAGE")
        Channel channel,

        @NotNull(
                message =
                        "is required: REACHED, SENT, NO_ANSWER, CALL_BACK_ASKED, WRONG_ADDRESS, RETURNED, NOT_WISHED or"
                                + " UNREACHABLE")
        AttemptResult result,

        @NotNull(message = "is required: when it was tried, with offset")
        OffsetDateTime at,

        @Size(max = 500, message = "takes at most 500 characters")
        String note,

        UUID corrects) {}
