package org.dentary.jaw;

/** Where the jaw is after it was read: only one that is kept can be read again. */
public enum Whereabouts {
    KEPT,
    RETURNED,
    GONE,
    PHOTO_ONLY
}
