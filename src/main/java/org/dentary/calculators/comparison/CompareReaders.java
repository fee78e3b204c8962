package org.dentary.calculators.comparison;

import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import java.util.List;
import org.dentary.statistics.agreement.Agreement;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Compare two readers by this table of counts. */
@Schema(name = "CompareReaders")
record CompareReaders(
        @Schema(description = "Two-sided level as a fraction; 0.95 when absent", examples = "0.95", nullable = true)
        Double confidence,

        @NotEmpty
        @Schema(
                description = "Square, classes in order: row is the first reader's class, column the second's",
                examples = "[[88,14,18],[10,40,10],[2,6,12]]")
        List<@NotNull List<@NotNull Integer>> counts) {

    double level() {
        return confidence == null ? 0.95 : confidence;
    }

    Agreement compute() {
        return Agreement.of(counts, level());
    }
}
