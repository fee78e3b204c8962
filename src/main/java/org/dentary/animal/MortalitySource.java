package org.dentary.animal;

/** How the animal died: not how it reached us, not whether it looked sick, not why it was sampled. */
public enum MortalitySource {
    HUNTER_HARVEST("Hunter harvest"),
    VEHICLE("Hit by a vehicle"),
    FOUND_DEAD("Found dead"),
    PREDATOR("Killed by a predator"),
    AGENCY_REMOVAL("Agency removal"),
    DAMAGE_PERMIT("Crop-damage permit"),
    LIVE("Live animal"),
    OTHER("Other"),
    UNKNOWN("Unknown");

    private final String words;

    MortalitySource(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
