package org.dentary.calculators.detection;

import java.util.List;
import org.dentary.statistics.detection.Freedom;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** The probability that prevalence is below the design prevalence, period by period, as JSON. */
@Schema(name = "Freedom", description = "Probability that prevalence is below the design prevalence")
record FreedomView(
        @Schema(description = "In the order given") List<PeriodView> periods,

        @Schema(
                description =
                        "What the prior settles at if the last period repeats for ever; null when it settles at nothing above 0",
                examples = "0.975",
                nullable = true)
        Double equilibriumPrior,

        @Schema(description = "Likewise for the posterior", examples = "0.995", nullable = true)
        Double equilibriumPosterior,

        @Schema(description = "How it was found") String method,
        @Schema(description = "Publication of the method") String source,

        @Schema(description = "Sentences to print beside the figures")
        List<String> warnings) {

    /** One period. */
    @Schema(name = "FreedomPeriod")
    record PeriodView(
            @Schema(description = "Probability before it", examples = "0.5", nullable = true)
            Double prior,

            @Schema(description = "As given", examples = "0.8")
            double sensitivity,

            @Schema(description = "Probability after it", examples = "0.8333", nullable = true)
            Double posterior) {}

    static FreedomView of(Freedom result) {
        return new FreedomView(
                result.periods().stream()
                        .map(p -> new PeriodView(p.prior(), p.sensitivity(), p.posterior()))
                        .toList(),
                result.equilibriumPrior(),
                result.equilibriumPosterior(),
                result.method(),
                result.source(),
                result.warnings());
    }
}
