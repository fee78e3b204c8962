package org.dentary.calculators;

import org.dentary.statistics.Limits;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Two limits, as JSON. */
@Schema(name = "Limits", description = "A lower and an upper limit; null when undefined")
public record LimitsView(
        @Schema(description = "Lower limit", examples = "0.012", nullable = true)
        Double lower,

        @Schema(description = "Upper limit", examples = "0.087", nullable = true)
        Double upper) {

    public static LimitsView of(Limits limits) {
        return new LimitsView(limits.lower(), limits.upper());
    }
}
