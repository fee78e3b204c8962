package org.dentary.calculators.comparison;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import java.util.List;
import org.dentary.statistics.comparison.Trend;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Test these scored groups for a trend. */
@Schema(name = "FindTrend")
record FindTrend(
        @NotEmpty @Schema(description = "At least one group")
        List<@NotNull @Valid Group> groups) {

    /** One group. */
    @Schema(name = "TrendGroup")
    record Group(
            @Schema(description = "What it is called", examples = "2.5 years", nullable = true)
            String label,

            @NotNull @Schema(description = "A real quantity such as an age in years", examples = "2.5")
            Double score,

            @NotNull @Schema(description = "Count detected", examples = "7")
            Integer detected,

            @NotNull @Schema(description = "Count tested", examples = "93")
            Integer tested) {}

    Trend compute() {
        return Trend.of(groups.stream()
                .map(g -> new Trend.Group(g.label(), g.score(), g.detected(), g.tested()))
                .toList());
    }
}
