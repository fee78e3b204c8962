package org.dentary.prevalence.comparison;

/** What a comparison comes to. "Not shown" never says that there is no difference. */
public enum Verdict {
    /** The interval leaves out "no difference" and the adjusted p is below 1 - confidence. */
    SHOWN("Shown"),
    /** These counts are compatible with no difference, and with others besides. */
    NOT_SHOWN("Not shown"),
    /** One figure for all would mislead; the classes are to be read one by one. */
    READ_ONE_BY_ONE("Read one by one"),
    /** Not a comparison: a figure for one season, given to be held against others. */
    ESTIMATE("Estimate"),
    /** Something that the comparison needs is missing; the sentence says what. */
    NOT_COMPARED("Not compared");

    private final String words;

    Verdict(String words) {
        this.words = words;
    }

    /** The verdict as a table shows it. */
    public String words() {
        return words;
    }
}
