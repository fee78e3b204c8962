package org.dentary.jaw;

import java.util.List;
import org.dentary.statistics.Agreement;

/**
 * How one reader agrees with others, on jaws that both could read.
 *
 * @param season season code; null for all
 * @param classes the classes, in the order of rows and columns of every table
 * @param drawn with other persons, on jaws that nobody referred: what tells how the reader reads
 * @param referred with other persons, on jaws referred to a second reader: harder by choice, so kept apart
 * @param knownAge with ages known from marks
 * @param notes how it was computed
 */
public record ReaderAgreement(
        String person,
        String season,
        List<String> classes,
        Compared drawn,
        Compared referred,
        Compared knownAge,
        List<String> notes) {
    /**
     * @param counts row: this reader's class; column: the other's or the known one
     * @param agreement percent exact, within one class, signed bias of the other over this reader, kappas
     */
    public record Compared(List<List<Integer>> counts, Agreement agreement) {}
}
