package org.dentary.result;

import java.util.List;

/** What was read of a file: its rows and the faults seen while reading. */
record ImportFile(List<ImportRow> rows, List<RowProblem> problems) {}
