package org.dentary.prevalence.cut;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/**
 * A cut to make.
 *
 * @param season season code
 * @param name how people call it, unique within the season
 * @param superseded why the cut should no longer be used; only on a cut that is there, with If-Match
 */
public record MakeDataCut(
        @NotBlank(message = "is required: a season's code") String season,

        @NotBlank(message = "is required: a name that people will use")
        @Size(max = 80, message = "takes at most 80 characters")
        String name,

        @Size(max = 500, message = "takes at most 500 characters")
        String superseded) {}
