package org.dentary.jaw.key;

/** How far an age can be relied on: {@code CLEAR} is kept for the four patterns that every reader is taught. */
public enum Certainty {
    CLEAR,
    PROBABLE,
    UNRESOLVED
}
