package org.dentary.calculators.detection;

import java.util.List;
import org.dentary.statistics.detection.Detection;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** What a sample can be expected to show, as JSON. */
@Schema(name = "DetectionProbability")
record DetectionView(
        @Schema(description = "Chance of at least one detection, true or false", examples = "0.9538")
        double probability,

        @Schema(description = "Chance of at least one true detection", examples = "0.9538")
        double probabilityTrue,

        @Schema(description = "Chance of at least one detection in a herd without infection", examples = "0")
        double probabilityIfAbsent,

        @Schema(
                description = "Chance of exactly 0, 1, 2 ... detections; up to the number tested, at most 1,000",
                examples = "[0.0462, 0.1835, 0.2960]")
        List<Double> byDetected,

        @Schema(
                description = "Approximation 1 - (1 - n Se / N)^d; null when n Se exceeds N",
                examples = "0.9497",
                nullable = true)
        Double macDiarmid,

        @Schema(description = "Approximation for a herd much larger than the sample", examples = "0.9006")
        double binomial,

        @Schema(description = "Infected animals assumed", examples = "5")
        int infected,

        @Schema(description = "How it was found") String method,
        @Schema(description = "Publications of the method") String source,

        @Schema(description = "Sentences to print beside the figure")
        List<String> warnings) {

    static DetectionView of(Detection result) {
        return new DetectionView(
                result.probability(),
                result.probabilityTrue(),
                result.probabilityIfAbsent(),
                result.byDetected(),
                result.macDiarmid(),
                result.binomial(),
                result.infected(),
                result.method(),
                result.source(),
                result.warnings());
    }
}
