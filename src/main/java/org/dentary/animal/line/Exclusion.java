package org.dentary.animal.line;

/** Why an animal is counted nowhere; the first that applies, in this order. */
public enum Exclusion {
    ENTERED_IN_ERROR("Entered in error"),
    DUPLICATE("Same animal as another kit"),
    NOT_ATTRIBUTABLE("Label in doubt: a swap or an identity exception");

    private final String words;

    Exclusion(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
