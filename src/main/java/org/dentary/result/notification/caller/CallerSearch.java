package org.dentary.result.notification.caller;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;

/**
 * A caller without a stub.
 *
 * @param by what the caller gave
 * @param purpose why it is searched; kept in the audit
 */
public record CallerSearch(
        @NotNull(message = "is required: REGISTRATION, PHONE or NAME")
        By by,

        @NotBlank(message = "is required: the number or name as the caller says it")
        @Size(max = 200, message = "takes at most 200 characters")
        String value,

        @NotBlank(message = "is required: why you look, such as: caller asks for the result")
        @Size(max = 200, message = "takes at most 200 characters")
        String purpose) {
    /** What is searched. */
    public enum By {
        REGISTRATION,
        PHONE,
        NAME
    }

    /** Says nothing of the person, so that no log can. */
    @Override
    public String toString() {
        return "a search by " + by;
    }
}
