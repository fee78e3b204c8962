package org.dentary.animal;

/** Where the animal lived; reports count WILD unless asked for more. */
public enum Origin {
    WILD("Wild"),
    CAPTIVE("Captive"),
    ESCAPED_CAPTIVE("Escaped from captivity"),
    UNKNOWN("Unknown");

    private final String words;

    Origin(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
