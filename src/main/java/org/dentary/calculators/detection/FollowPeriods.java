package org.dentary.calculators.detection;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import java.util.List;
import org.dentary.statistics.detection.Freedom;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Follow the probability that prevalence is below the design prevalence over these periods. */
@Schema(name = "FollowPeriods")
record FollowPeriods(
        @NotNull @Schema(description = "Probability before the first period", examples = "0.5")
        Double prior,

        @NotNull @Schema(description = "Probability of introduction between two periods", examples = "0.02")
        Double introduction,

        @NotEmpty @Schema(description = "At least one period, in order")
        List<@NotNull @Valid Period> periods) {

    /** One period. */
    @Schema(name = "FollowPeriod")
    record Period(
            @NotNull
            @Schema(
                    description = "Probability that the period detects infection at the design prevalence",
                    examples = "0.8")
            Double sensitivity,

            @Schema(description = "Whether it did; false when absent", examples = "false", nullable = true)
            Boolean detected) {}

    Freedom compute() {
        return Freedom.of(
                prior,
                introduction,
                periods.stream()
                        .map(p -> new Freedom.Period(p.sensitivity(), Boolean.TRUE.equals(p.detected())))
                        .toList());
    }
}
