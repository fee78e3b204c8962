package org.dentary.custody.handover;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;

/**
 * Refuse what was offered, or withdraw one's own offer.
 *
 * @param codes left out or empty: all that is still offered; a box brings its contents
 * @param reason always needed
 * @param occurredAt left out: now
 * @param enteredAt when that was entered on the device; left out: when the service received it
 * @param photos ids of photographs that show it, kept before, or left out
 */
public record RefuseHandOver(
        List<@NotBlank(message = "a code is empty; scan it again") String> codes,

        @NotBlank(message = "say why it is refused") @Size(max = 2000, message = "a reason has up to 2000 characters")
        String reason,

        OffsetDateTime occurredAt,

        OffsetDateTime enteredAt,

        // Left out where empty, so that what was accepted before there were photos has the digest that it had.
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<UUID> photos) {
    public RefuseHandOver {
        codes = codes == null ? List.of() : List.copyOf(codes);
    }

    /** The same without its time. */
    RefuseHandOver untimed() {
        return new RefuseHandOver(codes, reason, null, enteredAt, photos);
    }
}
