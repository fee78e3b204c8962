package org.dentary.animal;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/**
 * Another name under which somebody knows the animal; the scan box finds it.
 *
 * @param type such as {@code REGISTRATION}, {@code EAR_TAG} or {@code OLD_ID}
 * @param issuer who gave it, or null
 * @param value as written on the tag or form
 */
public record Identifier(
        @NotBlank(message = "name the kind of identifier, such as REGISTRATION, EAR_TAG or OLD_ID") @Size(max = 40)
        String type,

        @Size(max = 80) String issuer,

        @NotBlank(message = "give the identifier as it is written") @Size(max = 80)
        String value) {}
