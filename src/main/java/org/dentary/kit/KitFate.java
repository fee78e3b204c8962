package org.dentary.kit;

/** What became of a kit that was not used. */
public enum KitFate {
    /** Handed back to the coordinator. */
    RETURNED,
    /** Cannot be found; a kit that turns up and is used counts as used. */
    LOST,
    /** At the station after all: found again, or reported by mistake. */
    LEFT
}
