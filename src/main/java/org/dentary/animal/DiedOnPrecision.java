package org.dentary.animal;

/** How exactly the day of death is known. */
public enum DiedOnPrecision {
    DAY("To the day"),
    WEEK("Within a week"),
    MONTH("Within a month"),
    SEASON("Within the season");

    private final String words;

    DiedOnPrecision(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
