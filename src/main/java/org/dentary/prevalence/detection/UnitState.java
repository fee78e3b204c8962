package org.dentary.prevalence.detection;

/** How a unit stands. */
public enum UnitState {
    NOT_SAMPLED("not sampled"),
    BELOW_TARGET("below target"),
    TARGET_REACHED("target reached"),
    /** Detected in the season asked for; its chance is no longer the question. */
    DETECTED("detected"),
    /** Not detected in the season asked for, but in one before it. */
    DETECTED_EARLIER("detected before");

    private final String words;

    UnitState(String words) {
        this.words = words;
    }

    /** The state as a cell says it. */
    public String words() {
        return words;
    }
}
