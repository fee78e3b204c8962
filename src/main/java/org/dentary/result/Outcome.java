package org.dentary.result;

/** An animal's outcome for one disease, derived from findings. */
public enum Outcome {
    DETECTED,
    SUSPECT,
    PENDING,
    NOT_DETECTED,
    INCONCLUSIVE,
    UNSUITABLE,
    NOT_TESTED
}
