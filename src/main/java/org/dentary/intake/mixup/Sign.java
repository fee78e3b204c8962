package org.dentary.intake.mixup;

/** What makes a mix-up likely. Common practice, no source. */
public enum Sign {
    /** Two kits carry the same registration, tag or old number. */
    SAME_IDENTIFIER("the same number or tag on both", true),
    /** Same station, day, species and sex, taken in next to each other; one has a jaw alone, the other tissue alone. */
    TWO_HALVES("a jaw without tissue and tissue without a jaw, same station, day and sex", true),
    /** Labels of both were scanned together as one animal's. */
    SCANNED_TOGETHER("their labels were scanned together and are not one kit", true),
    /** Somebody counted a jar under another animal's code. */
    WRONG_ID("a jar carried another code than it should", false),
    /** The jaw does not fit what is known of the animal (contradiction J11 or J20). */
    JAW_OF_ANOTHER("the jaw does not fit the animal", false);

    private final String words;
    private final boolean isOfTwo;

    Sign(String words, boolean isOfTwo) {
        this.words = words;
        this.isOfTwo = isOfTwo;
    }

    /** What it is in plain words, lower case. */
    public String words() {
        return words;
    }

    /** Whether it names both animals. */
    public boolean isOfTwo() {
        return isOfTwo;
    }
}
