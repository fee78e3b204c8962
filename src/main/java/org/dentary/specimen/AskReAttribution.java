package org.dentary.specimen;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/**
 * What is under a label came from another kit's animal.
 *
 * @param kit the kit whose animal it came from
 * @param evidence what shows it: a photo, the form, who saw it
 */
public record AskReAttribution(
        @NotBlank(message = "name the kit whose animal it came from")
        String kit,

        @NotBlank(message = "say how the labels came to be swapped") @Size(max = 1000)
        String reason,

        @NotBlank(message = "say what shows it, such as the form, a photo or who saw it") @Size(max = 2000)
        String evidence) {}
