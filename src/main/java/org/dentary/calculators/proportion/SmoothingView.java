package org.dentary.calculators.proportion;

import java.util.List;
import org.dentary.statistics.Smoothing;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Small areas raw and smoothed, as JSON. */
@Schema(name = "Smoothing")
record SmoothingView(
        @Schema(
                description = "All detected / all tested; null when nothing was tested",
                examples = "0.0421",
                nullable = true)
        Double pooled,

        @Schema(
                description = "Estimated variance between units; null when it cannot be told",
                examples = "0.00071",
                nullable = true)
        Double betweenUnits,

        @Schema(
                description = "Animals the common proportion counts for; null when no spread can be told from chance",
                examples = "55.8",
                nullable = true)
        Double priorSize,

        @Schema(description = "The units in the order given")
        List<UnitView> units,

        @Schema(description = "Two-sided level as a fraction", examples = "0.95")
        double confidence,

        @Schema(description = "How it was done") String method,
        @Schema(description = "Publications of the method") String source,

        @Schema(description = "Sentences to print beside the figures")
        List<String> warnings) {

    /** One unit. */
    @Schema(name = "SmoothedUnit")
    record UnitView(
            @Schema(description = "As given", examples = "North Fork", nullable = true)
            String label,

            @Schema(description = "detected / tested; null when nothing was tested", examples = "0.25", nullable = true)
            Double raw,

            @Schema(description = "Drawn towards the common proportion", examples = "0.056", nullable = true)
            Double smoothed,

            @Schema(description = "Lower limit; null when there is no interval", examples = "0.013", nullable = true)
            Double lower,

            @Schema(description = "Upper limit; null when there is no interval", examples = "0.127", nullable = true)
            Double upper,

            @Schema(description = "Sentences to print beside the unit")
            List<String> warnings) {}

    static SmoothingView of(Smoothing result, double confidence) {
        return new SmoothingView(
                result.pooled(),
                result.betweenUnits(),
                result.priorSize(),
                result.units().stream()
                        .map(u -> new UnitView(u.label(), u.raw(), u.smoothed(), u.lower(), u.upper(), u.warnings()))
                        .toList(),
                confidence,
                result.method(),
                result.source(),
                result.warnings());
    }
}
