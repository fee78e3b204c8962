package org.dentary.calculators.comparison;

import java.util.List;
import org.dentary.statistics.agreement.Agreement;
import org.dentary.statistics.agreement.Kappa;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Two readers compared, as JSON. */
@Schema(name = "Agreement")
record AgreementView(
        @Schema(description = "Animals read by both", examples = "200")
        int animals,

        @Schema(description = "Share given the same class", examples = "0.70", nullable = true)
        Double exact,

        @Schema(description = "Share given the same class or the next", examples = "0.90", nullable = true)
        Double withinOne,

        @Schema(description = "Mean of the second reader's class less the first's", examples = "0.10", nullable = true)
        Double bias,

        @Schema(description = "Cohen's kappa") KappaView kappa,

        @Schema(description = "Weighted kappa, linear weights")
        KappaView linear,

        @Schema(description = "Weighted kappa, quadratic weights")
        KappaView quadratic,

        @Schema(description = "Prevalence-adjusted kappa", examples = "0.55", nullable = true)
        Double prevalenceAdjusted,

        @Schema(description = "Gwet's AC1", examples = "0.58", nullable = true)
        Double ac1,

        @Schema(description = "The kappa these margins allow at most", examples = "0.83", nullable = true)
        Double kappaMax,

        @Schema(description = "Two-sided level as a fraction", examples = "0.95")
        double confidence,

        @Schema(description = "How the errors were found") String method,
        @Schema(description = "Publications of the methods") String source,

        @Schema(description = "Sentences to print beside the figures")
        List<String> warnings) {

    /** A kappa, as JSON. */
    @Schema(name = "Kappa")
    record KappaView(
            @Schema(description = "Null when chance alone would agree everywhere", examples = "0.492", nullable = true)
            Double estimate,

            @Schema(description = "For the interval", examples = "0.0510", nullable = true)
            Double standardError,

            @Schema(description = "For a test of no agreement beyond chance", examples = "0.0520", nullable = true)
            Double nullStandardError,

            @Schema(description = "Lower limit, not clipped", examples = "0.392", nullable = true)
            Double lower,

            @Schema(description = "Upper limit, not clipped", examples = "0.591", nullable = true)
            Double upper,

            @Schema(description = "Sentences to print beside the figure")
            List<String> warnings) {

        static KappaView of(Kappa kappa) {
            return new KappaView(
                    kappa.estimate(),
                    kappa.standardError(),
                    kappa.nullStandardError(),
                    kappa.lower(),
                    kappa.upper(),
                    kappa.warnings());
        }
    }

    static AgreementView of(Agreement result, double confidence) {
        return new AgreementView(
                result.animals(),
                result.exact(),
                result.withinOne(),
                result.bias(),
                KappaView.of(result.kappa()),
                KappaView.of(result.linear()),
                KappaView.of(result.quadratic()),
                result.prevalenceAdjusted(),
                result.ac1(),
                result.kappaMax(),
                confidence,
                result.method(),
                result.source(),
                result.warnings());
    }
}
