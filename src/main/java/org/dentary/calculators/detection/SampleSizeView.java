package org.dentary.calculators.detection;

import java.util.List;
import org.dentary.statistics.detection.SampleSize;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** How many to test, as JSON. */
@Schema(name = "SampleSize")
record SampleSizeView(
        @Schema(
                description = "The exact smallest sample; null when a census does not reach the level",
                examples = "45",
                nullable = true)
        Integer required,

        @Schema(description = "Infected animals assumed", examples = "5")
        int infected,

        @Schema(description = "Chance of detection of required, or of a census", examples = "0.9538")
        double achieved,

        @Schema(description = "Cannon and Roe's approximation, which assumes a perfect test", examples = "45")
        int cannonRoe,

        @Schema(
                description = "The approximation with sensitivity; null when it exceeds the herd",
                examples = "46",
                nullable = true)
        Integer withSensitivity,

        @Schema(description = "For a herd much larger than the sample", examples = "59")
        int infinitePopulation,

        @Schema(description = "Level as a fraction", examples = "0.95")
        double confidence,

        @Schema(description = "How it was found") String method,

        @Schema(description = "Publications of the approximations")
        String source,

        @Schema(description = "Sentences to print beside the figure")
        List<String> warnings) {

    static SampleSizeView of(SampleSize result, double confidence) {
        return new SampleSizeView(
                result.required(),
                result.infected(),
                result.achieved(),
                result.cannonRoe(),
                result.withSensitivity(),
                result.infinitePopulation(),
                confidence,
                result.method(),
                result.source(),
                result.warnings());
    }
}
