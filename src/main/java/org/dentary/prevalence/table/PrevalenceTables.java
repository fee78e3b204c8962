package org.dentary.prevalence.table;

import jakarta.enterprise.context.ApplicationScoped;
import org.dentary.prevalence.PrevalenceReport;

/** Reports as tables in the words of the plan. */
@ApplicationScoped
public class PrevalenceTables {
    private final DimensionValues values;

    PrevalenceTables(DimensionValues values) {
        this.values = values;
    }

    /** The report's cells as rows, codes as words, figures rounded. */
    public PrevalenceTable of(PrevalenceReport report) {
        return PrevalenceTable.of(report, values);
    }
}
