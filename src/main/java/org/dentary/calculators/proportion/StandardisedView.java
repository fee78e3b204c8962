package org.dentary.calculators.proportion;

import java.util.List;
import org.dentary.calculators.LimitsView;
import org.dentary.statistics.standardisation.Standardised;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A standardised prevalence, as JSON. */
@Schema(name = "Standardised")
record StandardisedView(
        @Schema(description = "Sum of weight times stratum proportion", examples = "0.0421")
        double estimate,

        @Schema(description = "Lower limit, Clopper-Pearson at the effective sample size", examples = "0.0223")
        double lower,

        @Schema(description = "Upper limit, likewise", examples = "0.0717")
        double upper,

        @Schema(description = "All detected / all tested", examples = "0.0389")
        double crude,

        @Schema(description = "Size of a simple random sample with the same variance", examples = "287.4")
        double effectiveN,

        @Schema(description = "Fay and Feuer's limits; the upper one may exceed 1")
        LimitsView gamma,

        @Schema(description = "Tiwari's limits; the lower one is Fay and Feuer's")
        LimitsView tiwari,

        @Schema(description = "Yan and Su's limits; null when every stratum is all or none detected")
        LimitsView stratifiedWilson,

        @Schema(description = "Two-sided level as a fraction", examples = "0.95")
        double confidence,

        @Schema(description = "How the limits were found") String method,
        @Schema(description = "Publications of the methods") String source,

        @Schema(description = "Sentences to print beside the figure")
        List<String> warnings) {

    static StandardisedView of(Standardised result, double confidence) {
        return new StandardisedView(
                result.estimate(),
                result.lower(),
                result.upper(),
                result.crude(),
                result.effectiveN(),
                LimitsView.of(result.gamma()),
                LimitsView.of(result.tiwari()),
                LimitsView.of(result.stratifiedWilson()),
                confidence,
                result.method(),
                result.source(),
                result.warnings());
    }
}
