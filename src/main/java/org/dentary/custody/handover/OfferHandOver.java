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
 * Offer codes to somebody.
 *
 * @param codes specimens and boxes; what lies in a box goes with it
 * @param to a person, an account, a store, a party or a laboratory
 * @param place a station, a store or words
 * @param occurredAt when they were handed over
 * @param enteredAt when that was entered on the device; left out: when the service received it
 * @param reason needed when entered beyond the plan's hours
 * @param signedBy who signed on this screen for a party without an account
 * @param paperForm number of the paper form that both signed; such an entry is always late
 * @param signature what {@code signedBy} drew, strokes as {@link Signature} takes them, or left out
 * @param photos ids of photographs that show it, kept before, or left out
 */
public record OfferHandOver(
        @NotEmpty(message = "send at least one code, as scanned")
        List<@NotBlank(message = "a code is empty; scan it again") String> codes,

        @NotBlank(message = "name who receives: a person, an account, a store, a party or a laboratory")
        String to,

        @Size(max = 200, message = "a place has up to 200 characters")
        String place,

        @NotNull(message = "say when, as a time with offset such as 2026-11-14T07:30:00-06:00")
        OffsetDateTime occurredAt,

        OffsetDateTime enteredAt,

        @Size(max = 2000, message = "a reason has up to 2000 characters")
        String reason,

        @Size(max = 200, message = "a signature is a name of up to 200 characters")
        String signedBy,

        @Size(max = 60, message = "a form number has up to 60 characters")
        String paperForm,

        String signature,

        // Left out where empty, so that what was accepted before there were photos has the digest that it had.
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<UUID> photos) {

    /** The same without its time. */
    OfferHandOver untimed() {
        return new OfferHandOver(codes, to, place, null, enteredAt, reason, signedBy, paperForm, signature, photos);
    }

    /** Whether somebody signed for it on the screen. */
    public boolean isSigned() {
        return signedBy != null && !signedBy.isBlank();
    }

    /** Whether it was written down on a paper form first. */
    public boolean isOnPaper() {
        return paperForm != null && !paperForm.isBlank();
    }

    /** A paper form is the reason why its entry is late, where no other is given. */
    String reasonGiven() {
        if (reason == null || reason.isBlank()) {
            return isOnPaper() ? "entered from paper form " + paperForm.strip() : null;
        }
        return reason.strip();
    }
}
