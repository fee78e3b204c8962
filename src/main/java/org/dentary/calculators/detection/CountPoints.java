package org.dentary.calculators.detection;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import java.util.List;
import org.dentary.statistics.detection.WeightedPoints;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Count the points of these classes. The relative risks are the caller's own, with their citation. */
@Schema(name = "CountPoints")
record CountPoints(
        @NotNull @Schema(description = "Prevalence to be detected, above 0 and up to 1", examples = "0.01")
        Double designPrevalence,

        @NotNull @Schema(description = "Sensitivity of the test, above 0 and up to 1", examples = "0.92")
        Double sensitivity,

        @Schema(description = "Level as a fraction; 0.95 when absent", examples = "0.95", nullable = true)
        Double confidence,

        @NotEmpty @Schema(description = "At least one class")
        List<@NotNull @Valid RiskClass> classes) {

    /** One class. */
    @Schema(name = "CountPointsClass")
    record RiskClass(
            @Schema(description = "What it is called", examples = "Adult males, harvested", nullable = true)
            String label,

            @NotNull @Schema(description = "Animals tested with a definite result", examples = "120")
            Integer tested,

            @Schema(
                    description = "1 for the reference class; absent when none is known, and then no points",
                    examples = "1",
                    nullable = true)
            Double relativeRisk,

            @Schema(description = "Share of the herd; for all classes or for none", examples = "0.2", nullable = true)
            Double populationShare) {}

    double level() {
        return confidence == null ? 0.95 : confidence;
    }

    WeightedPoints compute() {
        return WeightedPoints.of(
                designPrevalence,
                sensitivity,
                level(),
                classes.stream()
                        .map(c -> new WeightedPoints.RiskClass(
                                c.label(), c.tested(), c.relativeRisk(), c.populationShare()))
                        .toList());
    }
}
