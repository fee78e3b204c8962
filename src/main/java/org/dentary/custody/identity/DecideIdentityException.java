package org.dentary.custody.identity;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * Grants or refuses an identity exception, once and for ever.
 *
 * @param granted whether the specimen counts as that animal's
 * @param reason what was looked at and why it does, or does not, suffice
 * @param password of the account that signs; it is checked and kept nowhere
 */
public record DecideIdentityException(
        @NotNull(message = "say true to grant it, false to refuse it")
        Boolean granted,

        @NotBlank(message = "say what you looked at and why it does, or does not, suffice")
        @Size(max = 2000, message = "a reason has up to 2000 characters")
        String reason,

        @Schema(writeOnly = true) @NotBlank(message = "sign with the password of your own account")
        String password) {}
