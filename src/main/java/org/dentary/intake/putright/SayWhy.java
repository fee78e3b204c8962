package org.dentary.intake.putright;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** A reason and, where there is any, what shows it. */
public record SayWhy(
        @NotBlank(message = "say why") @Size(max = 1000) String reason,
        @Size(max = 2000) String evidence) {}
