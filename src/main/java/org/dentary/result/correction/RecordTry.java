package org.dentary.result.correction;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import org.dentary.result.notification.Channel;

/**
 * A try to tell an agency, a role or a cut's maker of a correction.
 *
 * @param note what the next person must know; no names of private people and no numbers
 */
public record RecordTry(
        @NotNull(message = "is required: PHONE, IN_PERSON, LETTER or MESSAGE")
        Channel channel,

        @NotNull(message = "is required: REACHED, SENT, NO_ANSWER or UNREACHABLE")
        Result result,

        @NotNull(message = "is required: when it was tried, with offset")
        OffsetDateTime at,

        @Size(max = 500, message = "takes at most 500 characters")
        String note) {
    /** What came of it. */
    public enum Result {
        /** They were told and understood. */
        REACHED,
        /** It was written; between offices that closes it. */
        SENT,
        NO_ANSWER,
        /** Every way was tried; nothing more is done. */
        UNREACHABLE
    }
}
