package org.dentary.calculators.comparison;

import java.util.List;
import org.dentary.calculators.TestView;
import org.dentary.statistics.comparison.Trend;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A trend and what it leaves unexplained, as JSON. */
@Schema(name = "Trend")
record TrendView(
        @Schema(description = "Change of the proportion per unit of score", examples = "0.0112", nullable = true)
        Double slope,

        @Schema(description = "Cochran-Armitage") TestView trend,
        @Schema(description = "Pearson's over the groups") TestView heterogeneity,

        @Schema(description = "heterogeneity - trend; a small p says that a line misleads")
        TestView departure,

        @Schema(description = "What holds for the groups as a whole")
        List<String> warnings) {

    static TrendView of(Trend result) {
        return new TrendView(
                result.slope(),
                TestView.of(result.trend()),
                TestView.of(result.heterogeneity()),
                TestView.of(result.departure()),
                result.warnings());
    }
}
