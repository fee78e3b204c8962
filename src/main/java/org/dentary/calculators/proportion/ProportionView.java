package org.dentary.calculators.proportion;

import java.util.List;
import org.dentary.statistics.IntervalMethod;
import org.dentary.statistics.Proportion;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** One proportion, as JSON. */
@Schema(name = "Proportion")
record ProportionView(
        @Schema(description = "detected / tested; null when nothing was tested", examples = "0.0405", nullable = true)
        Double estimate,

        @Schema(description = "Lower limit; null when nothing was tested", examples = "0.0187", nullable = true)
        Double lower,

        @Schema(description = "Upper limit; null when nothing was tested", examples = "0.0858", nullable = true)
        Double upper,

        @Schema(description = "Count detected, as given", examples = "6")
        int detected,

        @Schema(description = "Count tested, as given", examples = "148")
        int tested,

        @Schema(description = "Method of the interval", examples = "WILSON")
        IntervalMethod interval,

        @Schema(description = "Two-sided level as a fraction", examples = "0.95")
        double confidence,

        @Schema(description = "What a footnote says of the interval", examples = "Wilson score")
        String method,

        @Schema(description = "Publication of the method", examples = "Wilson 1927, J Am Stat Assoc 22:209-212")
        String source,

        @Schema(description = "Sentences to print beside the figure")
        List<String> warnings) {

    static ProportionView of(Proportion result) {
        return new ProportionView(
                result.estimate(),
                result.lower(),
                result.upper(),
                result.detected(),
                result.tested(),
                result.interval(),
                result.confidence(),
                result.method(),
                result.source(),
                result.warnings());
    }
}
