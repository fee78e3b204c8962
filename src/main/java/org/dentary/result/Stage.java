package org.dentary.result;

/** The stage of a test, in the order in which a later one overrules an earlier; an adjunct stands beside them. */
public enum Stage {
    ADJUNCT,
    SCREENING,
    REPEAT,
    CONFIRMATORY
}
