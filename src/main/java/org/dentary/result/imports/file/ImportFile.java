package org.dentary.result.imports.file;

import java.util.List;

/**
 * What was read of a file: its rows and the faults seen while reading.
 *
 * @param mapped whether the laboratory's column map was used
 */
public record ImportFile(List<ImportRow> rows, List<RowProblem> problems, boolean mapped) {
    ImportFile(List<ImportRow> rows, List<RowProblem> problems) {
        this(rows, problems, false);
    }
}
