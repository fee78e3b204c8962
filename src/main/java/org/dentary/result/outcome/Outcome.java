package org.dentary.result.outcome;

/** An animal's outcome for one disease, derived from findings. */
public enum Outcome {
    DETECTED,
    SUSPECT,
    PENDING,
    NOT_DETECTED,
    INCONCLUSIVE,
    UNSUITABLE,
    NOT_TESTED;

    /** Whether it asks that something be done before anybody is told. */
    boolean isSuspicion() {
        return this == DETECTED || this == SUSPECT;
    }
}
