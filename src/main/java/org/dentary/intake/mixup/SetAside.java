package org.dentary.intake.mixup;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;

/**
 * Say that a suspected mix-up is none.
 *
 * @param kit a kit or a label of it
 * @param other the other, or left out where it was not known
 * @param sign what made it likely
 * @param reason why it is none
 */
public record SetAside(
        @NotBlank(message = "name the kit") String kit,
        String other,

        @NotNull(message = "say which sign it is about, such as TWO_HALVES")
        Sign sign,

        @NotBlank(message = "say why it is no mix-up") @Size(max = 500, message = "a reason has up to 500 characters")
        String reason) {}
