package org.dentary.kit;

import jakarta.validation.constraints.NotBlank;

/** Void a label. */
public record VoidLabel(
        @NotBlank(message = "is missing; say why the label must not be used")
        String reason) {}
