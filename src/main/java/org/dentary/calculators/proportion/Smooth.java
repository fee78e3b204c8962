package org.dentary.calculators.proportion;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import java.util.List;
import org.dentary.statistics.Smoothing;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Draw these small areas towards their common proportion. */
@Schema(name = "Smooth")
record Smooth(
        @Schema(description = "Two-sided level as a fraction; 0.95 when absent", examples = "0.95", nullable = true)
        Double confidence,

        @NotEmpty @Schema(description = "At least one unit") List<@NotNull @Valid Unit> units) {

    /** One unit. */
    @Schema(name = "SmoothUnit")
    record Unit(
            @Schema(description = "What it is called", examples = "North Fork", nullable = true)
            String label,

            @NotNull @Schema(description = "Count detected", examples = "1")
            Integer detected,

            @NotNull @Schema(description = "Count tested", examples = "4")
            Integer tested) {}

    double level() {
        return confidence == null ? 0.95 : confidence;
    }

    Smoothing compute() {
        return Smoothing.of(
                units.stream()
                        .map(u -> new Smoothing.Unit(u.label(), u.detected(), u.tested()))
                        .toList(),
                level());
    }
}
