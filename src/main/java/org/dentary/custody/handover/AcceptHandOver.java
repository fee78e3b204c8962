package org.dentary.custody.handover;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;

/**
 * Take over what was counted.
 *
 * @param codes as scanned. A box alone stands for all that is in it; once one of its contents is scanned as well, its
 *     contents are counted by their own codes
 * @param occurredAt when it was counted
 * @param enteredAt when that was entered on the device; left out: when the service received it
 * @param reason needed when entered beyond the plan's hours
 * @param photos ids of photographs that show it, kept before, or left out
 */
public record AcceptHandOver(
        @NotEmpty(message = "send the codes that you counted; to take none, refuse the hand-over")
        List<@NotBlank(message = "a code is empty; scan it again") String> codes,

        @NotNull(message = "say when, as a time with offset such as 2026-11-14T07:30:00-06:00")
        OffsetDateTime occurredAt,

        OffsetDateTime enteredAt,

        @Size(max = 2000, message = "a reason has up to 2000 characters")
        String reason,

        // Left out where empty, so that what was accepted before there were photos has the digest that it had.
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<UUID> photos) {
    /** The same without its time. */
    AcceptHandOver untimed() {
        return new AcceptHandOver(codes, null, enteredAt, reason, photos);
    }
}
