package org.dentary.prevalence.table;

import org.dentary.prevalence.PrevalenceReport;

import jakarta.enterprise.context.ApplicationScoped;

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
