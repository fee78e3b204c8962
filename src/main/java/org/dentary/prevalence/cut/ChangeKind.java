package org.dentary.prevalence.cut;

/** What kind of change a line shows between two cuts, in the order in which a summary tells them. */
public enum ChangeKind {
    PENDING_RESOLVED("Pending resolved", "pending resolved", "pending resolved"),
    /** A word that had been told was replaced by another. */
    CORRECTION("Outcome corrected", "correction of an outcome", "corrections of outcomes"),
    /** Not tested before: tissue came in, was sent or was tested since. */
    TESTING_BEGUN(
            "Tested or sent since",
            "untested before and tested or sent since",
            "untested before and tested or sent since"),
    LATE_INTAKE("Late intake", "late intake", "late intakes"),
    /** Taken in with another season, by a day of death that was corrected since. */
    MOVED_IN("Moved into the season", "moved into the season", "moved into the season"),
    LEFT("Left the season", "left the season", "left the season"),
    /** Age, sex, place, source or whether it counts. */
    FACTS("Other facts", "with other facts changed", "with other facts changed");

    private final String head;
    private final String one;
    private final String several;

    ChangeKind(String head, String one, String several) {
        this.head = head;
        this.one = one;
        this.several = several;
    }

    /** As a table says it. */
    public String head() {
        return head;
    }

    /** Such as "1 late intake" or "2 late intakes". */
    String told(long lines) {
        return lines + " " + (lines == 1 ? one : several);
    }

    /**
     * The kind of a line that is in both cuts.
     *
     * @param before released outcome in the first
     * @param after released outcome in the second
     */
    static ChangeKind of(String before, String after) {
        if (before.equals(after)) {
            return FACTS;
        }
        return switch (before) {
            case "PENDING" -> PENDING_RESOLVED;
            case "NOT_TESTED" -> TESTING_BEGUN;
            default -> CORRECTION;
        };
    }
}
