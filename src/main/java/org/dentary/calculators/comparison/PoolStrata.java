package org.dentary.calculators.comparison;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import java.util.List;
import org.dentary.statistics.comparison.Stratified;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Compare two groups within these strata and pool. */
@Schema(name = "PoolStrata")
record PoolStrata(
        @Schema(description = "Two-sided level as a fraction; 0.95 when absent", examples = "0.95", nullable = true)
        Double confidence,

        @NotEmpty @Schema(description = "At least one stratum")
        List<@NotNull @Valid Stratum> strata) {

    /** One stratum. */
    @Schema(name = "PoolStratum")
    record Stratum(
            @Schema(description = "What it is called", examples = "Adults", nullable = true)
            String label,

            @NotNull @Schema(description = "Detected in the first group", examples = "9")
            Integer detected1,

            @NotNull @Schema(description = "Not detected in the first group", examples = "71")
            Integer notDetected1,

            @NotNull @Schema(description = "Detected in the second group", examples = "4")
            Integer detected2,

            @NotNull @Schema(description = "Not detected in the second group", examples = "96")
            Integer notDetected2) {}

    double level() {
        return confidence == null ? 0.95 : confidence;
    }

    Stratified compute() {
        return Stratified.of(
                strata.stream()
                        .map(s -> new Stratified.Stratum(
                                s.label(), s.detected1(), s.notDetected1(), s.detected2(), s.notDetected2()))
                        .toList(),
                level());
    }
}
