package org.dentary.result.imports.held;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/**
 * Take a line off the work list.
 *
 * @param note what came of it
 */
public record SettleLine(
        @NotBlank(message = "say what came of the line, such as: withdrawn by the laboratory")
        @Size(max = 500, message = "a note has up to 500 characters")
        String note) {}
