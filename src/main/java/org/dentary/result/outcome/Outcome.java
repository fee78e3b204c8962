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

    /** What is told before and after release: until then a suspicion and a detection both read as pending. */
    Outcome shown(boolean released) {
        return switch (this) {
            case SUSPECT -> PENDING;
            case DETECTED -> released ? DETECTED : PENDING;
            default -> this;
        };
    }
}
