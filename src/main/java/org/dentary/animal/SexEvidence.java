package org.dentary.animal;

/** What the sex rests on. */
public enum SexEvidence {
    GENITALIA_OR_UDDER("Genitalia or udder seen"),
    HEAD_ONLY("Head only"),
    TAG_OR_REPORTED("Tag or report"),
    UNKNOWN("Unknown");

    private final String words;

    SexEvidence(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
