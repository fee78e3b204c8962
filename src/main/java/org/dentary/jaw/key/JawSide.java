package org.dentary.jaw.key;

/** Which side of the jaw was read. */
public enum JawSide {
    LEFT,
    RIGHT,
    BOTH
}
