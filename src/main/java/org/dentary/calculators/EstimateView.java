package org.dentary.calculators;

import java.util.List;
import org.dentary.statistics.comparison.Estimate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A value with its interval, as JSON. */
@Schema(
        name = "Estimate",
        description =
                "A value with its two-sided interval; a null says why in warnings, an unbounded number is the string Infinity")
public record EstimateView(
        @Schema(description = "The estimate; null when undefined", examples = "0.2", nullable = true)
        Double estimate,

        @Schema(description = "Lower limit; null when undefined", examples = "0.0524", nullable = true)
        Double lower,

        @Schema(description = "Upper limit; null when undefined", examples = "0.3339", nullable = true)
        Double upper,

        @Schema(description = "What a footnote says of it", examples = "Newcombe score interval")
        String method,

        @Schema(description = "Publication of the method", examples = "Newcombe 1998, Stat Med 17:873-890, method 10")
        String source,

        @Schema(description = "Sentences to print beside the figure")
        List<String> warnings) {

    public static EstimateView of(Estimate estimate) {
        return new EstimateView(
                estimate.estimate(),
                estimate.lower(),
                estimate.upper(),
                estimate.method(),
                estimate.source(),
                estimate.warnings());
    }
}
