package org.dentary.result.incident;

/** The steps of every incident, in order; common practice, no source. The agency's written plan stands above them. */
public enum IncidentStep {
    /** Of an animal whose unit is unknown alone. */
    FIND_UNIT(
            "Find the unit that the animal came from: ask the hunter or finder again, read form, tag and the station's book,"
                    + " and put it into the animal's record; or say why it cannot be found"),
    HOLD_TISSUE("Hold all tissue of the animal, at the laboratories and in stores; nothing is discarded"),
    HOLD_JAW_AND_REMAINS("Hold jaw, head, carcass and what is left of it, and say where each is"),
    REVIEW_CHAIN_AND_LABELS("Review the custody of each specimen and its labels, entry by entry"),
    REVIEW_SAME_TABLE("Review the deer handled at the same table that day"),
    CONFIRM_IDENTITY("Confirm identity: DNA of tissue against jaw, ear or carcass, or state that none can be had"),
    CONFIRMATORY_LABORATORY("Have the confirmatory laboratory test the same tissue"),
    TRACE_CARCASS("Trace the carcass: processor, taxidermist, meat and parts that went elsewhere"),
    TELL_IN_ORDER("Tell those on the list below in its order; nobody else hears of it before the incident is closed");

    private final String words;

    IncidentStep(String words) {
        this.words = words;
    }

    /** What is to be done. */
    public String words() {
        return words;
    }
}
