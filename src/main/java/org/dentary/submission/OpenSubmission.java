package org.dentary.submission;

import jakarta.validation.constraints.NotBlank;

/**
 * A submission to begin.
 *
 * @param laboratory laboratory code
 * @param purpose why, SURVEILLANCE when left out
 */
public record OpenSubmission(
        @NotBlank(message = "is required: a laboratory's code")
        String laboratory,

        Purpose purpose) {
    /** Why tissue is sent. */
    public enum Purpose {
        SURVEILLANCE,
        HUNTER_SERVICE,
        DIAGNOSTIC,
        CONFIRMATORY,
        RESEARCH
    }
}
