package org.dentary.calculators.detection;

import java.util.List;
import org.dentary.statistics.detection.WeightedPoints;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Points earned and needed, as JSON. */
@Schema(name = "WeightedPoints")
record WeightedPointsView(
        @Schema(
                description = "POPULATION_MEAN when every class has a population share, else REFERENCE_CLASS",
                examples = "REFERENCE_CLASS")
        WeightedPoints.Convention convention,

        @Schema(description = "Points earned in that convention", examples = "214.5")
        double points,

        @Schema(description = "Points needed in that convention", examples = "325.6")
        Double required,

        @Schema(description = "Chance of at least one detection in that convention", examples = "0.861")
        double probability,

        @Schema(description = "Design prevalence meant as that of the class with relative risk 1")
        TallyView referenceClass,

        @Schema(
                description = "Design prevalence meant as that of the whole herd; null without population shares",
                nullable = true)
        TallyView populationMean,

        @Schema(description = "Animals tested in classes without a relative risk", examples = "0")
        long unweighted,

        @Schema(description = "Level as a fraction", examples = "0.95")
        double confidence,

        @Schema(description = "How it was found") String method,
        @Schema(description = "Publications of the method") String source,

        @Schema(description = "Sentences to print beside the figures")
        List<String> warnings) {

    /** One convention's tally. */
    @Schema(name = "PointsTally")
    record TallyView(
            @Schema(description = "Points earned", examples = "214.5")
            double points,

            @Schema(description = "Points needed", examples = "325.6")
            double required,

            @Schema(description = "Chance of at least one detection", examples = "0.861")
            double probability,

            @Schema(
                    description = "Highest prevalence that none detected leaves open; null without points",
                    examples = "0.0152",
                    nullable = true)
            Double upperLimit) {

        static TallyView of(WeightedPoints.Tally tally) {
            return tally == null
                    ? null
                    : new TallyView(tally.points(), tally.required(), tally.probability(), tally.upperLimit());
        }
    }

    static WeightedPointsView of(WeightedPoints result, double confidence) {
        return new WeightedPointsView(
                result.convention(),
                result.points(),
                result.required(),
                result.probability(),
                TallyView.of(result.referenceClass()),
                TallyView.of(result.populationMean()),
                result.unweighted(),
                confidence,
                result.method(),
                result.source(),
                result.warnings());
    }
}
