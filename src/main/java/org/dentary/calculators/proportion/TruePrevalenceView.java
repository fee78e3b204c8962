package org.dentary.calculators.proportion;

import java.util.List;
import org.dentary.statistics.TruePrevalence;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A true prevalence beside its apparent one, as JSON. */
@Schema(name = "TruePrevalence")
record TruePrevalenceView(
        @Schema(description = "detected / tested; null when nothing was tested", examples = "0.1533", nullable = true)
        Double apparent,

        @Schema(
                description = "Rogan and Gladen's estimate as computed, possibly outside 0 to 1",
                examples = "0.051",
                nullable = true)
        Double raw,

        @Schema(description = "raw cut to 0 to 1", examples = "0.051", nullable = true)
        Double estimate,

        @Schema(description = "Lower limit, cut to 0 to 1", examples = "0", nullable = true)
        Double lower,

        @Schema(description = "Upper limit, cut to 0 to 1", examples = "0.1275", nullable = true)
        Double upper,

        @Schema(description = "Whether raw lay outside 0 to 1", examples = "false")
        boolean truncated,

        @Schema(description = "Standard error of raw", examples = "0.0346", nullable = true)
        Double standardError,

        @Schema(description = "Sensitivity, as given or as estimated", examples = "0.96")
        double sensitivity,

        @Schema(description = "Specificity, as given or as estimated", examples = "0.89")
        double specificity,

        @Schema(description = "Two-sided level as a fraction", examples = "0.95")
        double confidence,

        @Schema(description = "How the limits were found") String method,
        @Schema(description = "Publications of the method") String source,

        @Schema(description = "Sentences to print beside the figure")
        List<String> warnings) {

    static TruePrevalenceView of(TruePrevalence result, double confidence) {
        return new TruePrevalenceView(
                result.apparent(),
                result.raw(),
                result.estimate(),
                result.lower(),
                result.upper(),
                result.truncated(),
                result.standardError(),
                result.sensitivity(),
                result.specificity(),
                confidence,
                result.method(),
                result.source(),
                result.warnings());
    }
}
