package org.dentary.animal;

/** Antlers; they describe the animal and never enter its age. */
public enum Antlers {
    NONE("None"),
    BUTTONS("Buttons"),
    IN_VELVET("In velvet"),
    HARD_SPIKES("Hard spikes"),
    HARD_BRANCHED("Hard, branched");

    private final String words;

    Antlers(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
