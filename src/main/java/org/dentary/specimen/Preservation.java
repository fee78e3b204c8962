package org.dentary.specimen;

/** How the tissue is kept. */
public enum Preservation {
    FRESH_CHILLED("Fresh, chilled"),
    FROZEN("Frozen"),
    FORMALIN("Formalin"),
    DRY("Dry"),
    ETHANOL("Ethanol"),
    OTHER("Other");

    private final String words;

    Preservation(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
