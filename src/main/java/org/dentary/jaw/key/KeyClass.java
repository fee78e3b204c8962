package org.dentary.jaw.key;

/**
 * The four ends of the key. Months are those of a November deer in a herd born about the first of June.
 *
 * <p>Source: Pennsylvania practice of three classes (6, 18 and 30 months and more) and the two faces of the yearling in state
 * ageing handouts (17 months with the milk premolar, 18 and 19 with the new one).
 */
public enum KeyClass {
    FAWN(AgeClass.FAWN, "Fawn, in its first year", 6),
    YEARLING_MILK_THIRD(AgeClass.YEARLING, "Yearling, milk third tooth still in place", 17),
    YEARLING_NEW_THIRD(AgeClass.YEARLING, "Yearling, new third tooth come through", 18),
    ADULT(AgeClass.ADULT, "Adult, two and a half years or older", 30);

    private final AgeClass ageClass;
    private final String label;
    private final int novemberMonths;

    KeyClass(AgeClass ageClass, String label, int novemberMonths) {
        this.ageClass = ageClass;
        this.label = label;
        this.novemberMonths = novemberMonths;
    }

    /** The class that reports use. */
    public AgeClass ageClass() {
        return ageClass;
    }

    /** The class in words, for screens and print. */
    public String label() {
        return label;
    }

    /** Months of age in November; for an adult the least it can be. */
    public int novemberMonths() {
        return novemberMonths;
    }
}
