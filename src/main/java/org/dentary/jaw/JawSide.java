package org.dentary.jaw;

/** Which side of the jaw was read. */
public enum JawSide {
    LEFT,
    RIGHT,
    BOTH
}
