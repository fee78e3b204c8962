package org.dentary.jaw.key;

/** The three classes that trained readers tell apart, and the honest fourth. */
public enum AgeClass {
    FAWN,
    YEARLING,
    ADULT,
    UNKNOWN
}
