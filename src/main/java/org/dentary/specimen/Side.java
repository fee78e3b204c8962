package org.dentary.specimen;

/** The animal's own side. */
public enum Side {
    LEFT("Left"),
    RIGHT("Right"),
    BOTH("Both"),
    NONE("No side"),
    UNKNOWN("Unknown");

    private final String words;

    Side(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
