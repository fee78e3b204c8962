package org.dentary.calculators.comparison;

import java.util.List;
import org.dentary.calculators.EstimateView;
import org.dentary.calculators.TestView;
import org.dentary.statistics.comparison.Estimate;
import org.dentary.statistics.comparison.Stratified;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Strata pooled, as JSON. */
@Schema(name = "Stratified")
record StratifiedView(
        @Schema(
                description = "Odds ratio of the strata thrown together; the string Infinity when unbounded",
                examples = "1.684",
                nullable = true)
        Double crudeOddsRatio,

        @Schema(description = "Mantel-Haenszel odds ratio; never to be read without breslowDayTarone")
        CommonOddsRatio oddsRatio,

        @Schema(description = "Mantel-Haenszel risk ratio") EstimateView riskRatio,

        @Schema(description = "Mantel-Haenszel risk difference")
        CommonDifference riskDifference,

        @Schema(description = "Test of no association, no continuity correction")
        TestView cochranMantelHaenszel,

        @Schema(description = "Test of a common odds ratio") TestView breslowDayTarone,

        @Schema(description = "Two-sided level as a fraction", examples = "0.95")
        double confidence,

        @Schema(description = "What holds for the strata as a whole")
        List<String> warnings) {

    /** The pooled odds ratio, as JSON. */
    @Schema(name = "CommonOddsRatio")
    record CommonOddsRatio(
            @Schema(description = "R / S; the string Infinity when unbounded", examples = "1.532", nullable = true)
            Double estimate,

            @Schema(description = "Lower limit; null when undefined", examples = "0.990", nullable = true)
            Double lower,

            @Schema(description = "Upper limit; null when undefined", examples = "2.369", nullable = true)
            Double upper,

            @Schema(description = "Standard error of the logarithm", examples = "0.2225", nullable = true)
            Double standardErrorLog,

            @Schema(description = "How the limits were found")
            String method,

            @Schema(description = "Publications of the method")
            String source,

            @Schema(description = "Sentences to print beside the figure")
            List<String> warnings) {}

    /** The pooled risk difference, as JSON. */
    @Schema(name = "CommonDifference")
    record CommonDifference(
            @Schema(description = "Pooled difference", examples = "0.0392", nullable = true)
            Double estimate,

            @Schema(description = "Lower limit; null when undefined", examples = "-0.0056", nullable = true)
            Double lower,

            @Schema(description = "Upper limit; null when undefined", examples = "0.0840", nullable = true)
            Double upper,

            @Schema(description = "Sato's standard error", examples = "0.0228", nullable = true)
            Double standardError,

            @Schema(description = "How the limits were found")
            String method,

            @Schema(description = "Publications of the method")
            String source,

            @Schema(description = "Sentences to print beside the figure")
            List<String> warnings) {}

    static StratifiedView of(Stratified result, double confidence) {
        Estimate ratio = result.oddsRatio();
        Estimate difference = result.riskDifference();
        return new StratifiedView(
                result.crudeOddsRatio(),
                new CommonOddsRatio(
                        ratio.estimate(),
                        ratio.lower(),
                        ratio.upper(),
                        result.standardErrorLog(),
                        ratio.method(),
                        ratio.source(),
                        ratio.warnings()),
                EstimateView.of(result.riskRatio()),
                new CommonDifference(
                        difference.estimate(),
                        difference.lower(),
                        difference.upper(),
                        result.riskDifferenceStandardError(),
                        difference.method(),
                        difference.source(),
                        difference.warnings()),
                TestView.of(result.cochranMantelHaenszel()),
                TestView.of(result.breslowDayTarone()),
                confidence,
                result.warnings());
    }
}
