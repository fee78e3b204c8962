package org.dentary.jaw.agreement;

import java.util.List;
import org.dentary.statistics.agreement.Agreement;

/**
 * How one reader agrees with others, on jaws that both could read.
 *
 * @param name the reader's name
 * @param season season code; null for all
 * @param classes the classes, in the order of rows and columns of every table
 * @param drawn with other persons, on jaws that the lot sent to a second reader: what tells how the reader reads
 * @param panel with the reference panel, in rounds of practice; each jaw once, by the reader's first answer
 * @param knownAge with ages known from marks
 * @param referred with other persons, on jaws that somebody or a rule chose: harder by choice, so kept apart
 * @param seasons each group in each season in which it has a jaw, oldest season first
 * @param notes how it was computed
 */
public record ReaderAgreement(
        String person,
        String name,
        String season,
        List<String> classes,
        Compared drawn,
        Compared panel,
        Compared knownAge,
        Compared referred,
        List<OfSeason> seasons,
        List<String> notes) {
    /**
     * @param counts row: this reader's class; column: the other's or the known one
     * @param agreement percent exact, within one class, signed bias of the other over this reader, kappas
     */
    public record Compared(List<List<Integer>> counts, Agreement agreement) {}

    /**
     * A group in a season.
     *
     * @param season season code; empty for jaws of no season
     */
    public record OfSeason(String season, Group compared, Agreement agreement) {}

    /** With whom or what a reader is compared. */
    public enum Group {
        DRAWN,
        PANEL,
        KNOWN_AGE,
        REFERRED
    }

    /** The group's comparison. */
    public Compared of(Group group) {
        return switch (group) {
            case DRAWN -> drawn;
            case PANEL -> panel;
            case KNOWN_AGE -> knownAge;
            case REFERRED -> referred;
        };
    }
}
