package org.dentary.calculators.proportion;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import java.util.List;
import org.dentary.statistics.standardisation.Standardised;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Standardise these strata to a reference herd. */
@Schema(name = "Standardise")
record Standardise(
        @Schema(description = "Two-sided level as a fraction; 0.95 when absent", examples = "0.95", nullable = true)
        Double confidence,

        @NotEmpty @Schema(description = "At least one stratum")
        List<@NotNull @Valid Stratum> strata) {

    /** One stratum. */
    @Schema(name = "StandardiseStratum")
    record Stratum(
            @Schema(description = "What it is called", examples = "Yearling males", nullable = true)
            String label,

            @NotNull @Schema(description = "Count detected", examples = "3")
            Integer detected,

            @NotNull @Schema(description = "Count tested; above 0 where there is weight", examples = "41")
            Integer tested,

            @NotNull @Schema(description = "Share or number of the reference herd in it", examples = "0.18")
            Double weight) {}

    double level() {
        return confidence == null ? 0.95 : confidence;
    }

    Standardised compute() {
        return Standardised.of(
                strata.stream()
                        .map(s -> new Standardised.Stratum(s.label(), s.detected(), s.tested(), s.weight()))
                        .toList(),
                level());
    }
}
