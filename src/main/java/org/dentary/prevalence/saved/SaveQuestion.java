package org.dentary.prevalence.saved;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/**
 * A question to keep.
 *
 * @param name how people call it, unique among those offered
 * @param query the part of a prevalence address behind the question mark; a cut in it is left out
 * @param withdrawn true: no longer offered, kept for whoever quotes it
 */
public record SaveQuestion(
        @NotBlank(message = "is required: a name that people will use")
        @Size(max = 80, message = "takes at most 80 characters")
        String name,

        @NotBlank(message = "is required: the part of a prevalence address behind the question mark")
        @Size(max = 4000, message = "takes at most 4,000 characters")
        String query,

        Boolean withdrawn) {}
