package org.dentary.calculators;

import java.util.List;
import org.dentary.statistics.comparison.TestStatistic;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A chi-square test, as JSON. */
@Schema(
        name = "ChiSquareTest",
        description = "A chi-square statistic with its upper-tail p; null when undefined, and warnings say why")
public record TestView(
        @Schema(description = "The statistic", examples = "8.2249", nullable = true)
        Double statistic,

        @Schema(description = "Degrees of freedom", examples = "1", nullable = true)
        Integer degreesOfFreedom,

        @Schema(description = "Upper-tail probability", examples = "0.004132", nullable = true)
        Double p,

        @Schema(description = "What a footnote says of it", examples = "Cochran-Armitage chi-square for trend")
        String method,

        @Schema(description = "Publication of the method", examples = "Armitage 1955, Biometrics 11:375-386")
        String source,

        @Schema(description = "Sentences to print beside the figure")
        List<String> warnings) {

    public static TestView of(TestStatistic test) {
        return new TestView(
                test.statistic(), test.degreesOfFreedom(), test.p(), test.method(), test.source(), test.warnings());
    }
}
