package org.dentary.custody.handover;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import java.util.List;

/**
 * Refuse what was offered, or withdraw one's own offer.
 *
 * @param codes left out or empty: all that is still offered; a box brings its contents
 * @param reason always needed
 * @param occurredAt left out: now
 * @param enteredAt when that was entered on the device; left out: when the service received it
 */
public record RefuseHandOver(
        List<@NotBlank(message = "a code is empty; scan it again") String> codes,

        @NotBlank(message = "say why it is refused") @Size(max = 2000, message = "a reason has up to 2000 characters")
        String reason,

        OffsetDateTime occurredAt,

        OffsetDateTime enteredAt) {
    public RefuseHandOver {
        codes = codes == null ? List.of() : List.copyOf(codes);
    }
}
