package org.dentary.animal;

/** Why the animal was sampled. */
public enum SamplingBasis {
    MANDATORY("Mandatory"),
    VOLUNTARY("Voluntary"),
    QUOTA("Quota"),
    HUNTER_REQUESTED("Hunter asked"),
    TARGETED("Targeted");

    private final String words;

    SamplingBasis(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
