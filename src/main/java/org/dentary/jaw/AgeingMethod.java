package org.dentary.jaw;

/** How an age was come by. */
public enum AgeingMethod {
    TOOTH_REPLACEMENT,
    TOOTH_WEAR,
    CEMENTUM,
    KNOWN_AGE_MARK,
    TOOTH_ROW_LENGTH,
    BODY_FEATURES,
    REPORTED_BY_HUNTER;

    /**
     * Whether an age by this method may be designated. Looks and hearsay never stand above an examined jaw: of deer aged from
     * photographs 36 % were right (Gee, Webb and Holman 2014, Wildlife Society Bulletin).
     *
     * @param jawExamined whether a jaw reading of the animal exists
     */
    public boolean mayBeDesignated(boolean jawExamined) {
        return !jawExamined || (this != BODY_FEATURES && this != REPORTED_BY_HUNTER);
    }
}
