package org.dentary.animal;

/** Whether the animal showed clinical signs while it was seen alive or fresh. */
public enum ClinicalSigns {
    NONE_SEEN("None seen"),
    SEEN("Seen"),
    NOT_OBSERVED("Nobody looked");

    private final String words;

    ClinicalSigns(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
