package org.dentary.setup;

import java.util.List;

/**
 * A file as given: cells trimmed and otherwise untouched.
 *
 * @param header names of the columns
 * @param lines the lines after the header, blank ones left out
 */
record RawTable(List<String> header, List<Line> lines) {
    /** One line: its number in the file, the header being 1, and its cells. */
    record Line(int number, List<String> cells) {}
}
