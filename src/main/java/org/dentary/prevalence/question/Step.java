package org.dentary.prevalence.question;

/** From taken to counted: each animal leaves at the first step that applies; all but {@link #TAKEN} add up to it. */
public enum Step {
    TAKEN("Taken"),
    ENTERED_IN_ERROR("Entered in error"),
    DUPLICATE("Second kit of an animal already in the list"),
    NOT_ATTRIBUTABLE("Label in doubt, not put right"),
    OUT_OF_SCOPE("Outside this report's scope"),
    NO_SPECIMEN("No tissue taken"),
    NOT_TESTED("Not tested"),
    UNSUITABLE("Tissue unsuitable"),
    INCONCLUSIVE("Inconclusive"),
    PENDING("Result pending"),
    COUNTED("Counted");

    private final String words;

    Step(String words) {
        this.words = words;
    }

    /** The step as a table's row is headed. */
    public String words() {
        return words;
    }
}
