package org.dentary.kit;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/**
 * Print a label again.
 *
 * @param stock code of the label stock
 * @param reason why the old print no longer serves
 */
public record ReprintLabel(
        @NotBlank(message = "is missing; name the label stock, such as LETTER_30")
        String stock,

        @NotBlank(message = "is missing; say why the old label no longer serves")
        @Size(max = 2000, message = "a reason has up to 2000 characters")
        String reason) {}
