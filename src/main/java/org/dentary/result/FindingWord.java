package org.dentary.result;

/** One test's word. */
public enum FindingWord {
    NOT_DETECTED("not detected"),
    DETECTED("detected"),
    SUSPECT("suspect"),
    INCONCLUSIVE("inconclusive"),
    UNSUITABLE("unsuitable"),
    NOT_TESTED("not tested"),
    INVALID_RUN("invalid run");

    private final String words;

    FindingWord(String words) {
        this.words = words;
    }

    /** As people say it. */
    public String words() {
        return words;
    }

    /** Whether it says something about the animal, and not only about the tissue or the run. */
    public boolean speaksOfTheAnimal() {
        return switch (this) {
            case NOT_DETECTED, DETECTED, SUSPECT, INCONCLUSIVE -> true;
            default -> false;
        };
    }
}
