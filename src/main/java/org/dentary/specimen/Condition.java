package org.dentary.specimen;

/** What the tissue looked like when it was taken. */
public enum Condition {
    GOOD("Good"),
    SOFT("Soft"),
    AUTOLYSED("Autolysed"),
    FROZEN_BEFORE_SAMPLING("Frozen before sampling"),
    CONTAMINATED("Contaminated"),
    UNKNOWN("Unknown");

    private final String words;

    Condition(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
