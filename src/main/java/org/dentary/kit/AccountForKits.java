package org.dentary.kit;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;

/**
 * Say what became of kits that were not used.
 *
 * @param kits kits, or labels of them
 */
public record AccountForKits(
        @NotEmpty(message = "is missing; scan at least one kit")
        List<@NotBlank(message = "is empty; scan a kit") String> kits,

        @NotNull(message = "is missing; RETURNED, LOST, or LEFT for one that is there after all")
        KitFate fate,

        @NotBlank(message = "is missing; say how this came about")
        @Size(max = 2000, message = "a reason has up to 2000 characters")
        String reason) {}
