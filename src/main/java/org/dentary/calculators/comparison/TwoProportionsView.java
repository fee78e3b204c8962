package org.dentary.calculators.comparison;

import java.util.List;
import org.dentary.calculators.EstimateView;
import org.dentary.statistics.comparison.FisherExact;
import org.dentary.statistics.comparison.OddsRatio;
import org.dentary.statistics.comparison.TestStatistic;
import org.dentary.statistics.comparison.TwoProportions;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Two proportions compared, as JSON. */
@Schema(name = "TwoProportions")
record TwoProportionsView(
        @Schema(description = "First proportion minus the second")
        EstimateView difference,

        @Schema(description = "First proportion over the second")
        EstimateView riskRatio,

        @Schema(description = "Odds ratio, three ways") OddsRatioView oddsRatio,
        @Schema(description = "Exact test") FisherView fisher,

        @Schema(description = "Chi-square without continuity correction")
        ChiSquareView chiSquare,

        @Schema(description = "Two-sided level as a fraction", examples = "0.95")
        double confidence,

        @Schema(description = "What holds for the comparison as a whole")
        List<String> warnings) {

    /** Odds ratio, as JSON. */
    @Schema(name = "OddsRatio")
    record OddsRatioView(
            @Schema(description = "ad / bc; the string Infinity when only bc is 0", examples = "2.667", nullable = true)
            Double estimate,

            @Schema(description = "Interval on the log scale; null limits when a cell is 0")
            EstimateView woolf,

            @Schema(description = "With 1/2 added to every cell: another estimate")
            EstimateView haldaneAnscombe,

            @Schema(description = "Conditional maximum likelihood with exact limits")
            EstimateView conditional,

            @Schema(description = "Sentences to print beside the figure")
            List<String> warnings) {

        static OddsRatioView of(OddsRatio result) {
            return new OddsRatioView(
                    result.estimate(),
                    EstimateView.of(result.woolf()),
                    EstimateView.of(result.haldaneAnscombe()),
                    EstimateView.of(result.conditional()),
                    result.warnings());
        }
    }

    /** Fisher's exact test, as JSON. */
    @Schema(name = "FisherExact")
    record FisherView(
            @Schema(description = "Two-sided p", examples = "0.4857", nullable = true)
            Double twoSided,

            @Schema(
                    description = "p of as many or fewer detected in the first group",
                    examples = "0.9857",
                    nullable = true)
            Double less,

            @Schema(
                    description = "p of as many or more detected in the first group",
                    examples = "0.2429",
                    nullable = true)
            Double greater,

            @Schema(
                    description = "Two-sided p less half the probability of the table seen",
                    examples = "0.3714",
                    nullable = true)
            Double midP,

            @Schema(description = "Publication of the method")
            String source,

            @Schema(description = "Sentences to print beside the figure")
            List<String> warnings) {

        static FisherView of(FisherExact result) {
            return new FisherView(
                    result.twoSided(),
                    result.less(),
                    result.greater(),
                    result.midP(),
                    result.source(),
                    result.warnings());
        }
    }

    /** Both chi-squares, as JSON. */
    @Schema(name = "TwoChiSquares")
    record ChiSquareView(
            @Schema(description = "Pearson's", examples = "6.806", nullable = true)
            Double statistic,

            @Schema(description = "Its p on one degree of freedom", examples = "0.00909", nullable = true)
            Double p,

            @Schema(description = "Pearson's times (N - 1)/N", examples = "6.761", nullable = true)
            Double statisticN1,

            @Schema(description = "Its p on one degree of freedom", examples = "0.00932", nullable = true)
            Double pN1,

            @Schema(description = "Publications of the methods")
            String source,

            @Schema(description = "Sentences to print beside the figure")
            List<String> warnings) {

        static ChiSquareView of(TestStatistic plain, TestStatistic n1) {
            return new ChiSquareView(
                    plain.statistic(),
                    plain.p(),
                    n1.statistic(),
                    n1.p(),
                    plain.source() + "; " + n1.source(),
                    plain.warnings());
        }
    }

    static TwoProportionsView of(TwoProportions result, double confidence) {
        return new TwoProportionsView(
                EstimateView.of(result.difference()),
                EstimateView.of(result.riskRatio()),
                OddsRatioView.of(result.oddsRatio()),
                FisherView.of(result.fisher()),
                ChiSquareView.of(result.chiSquare(), result.chiSquareN1()),
                confidence,
                result.warnings());
    }
}
