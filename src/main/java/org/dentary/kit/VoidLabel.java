package org.dentary.kit;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** Void a label. */
public record VoidLabel(
        @NotBlank(message = "is missing; say why the label must not be used")
        @Size(max = 2000, message = "a reason has up to 2000 characters")
        String reason) {}
