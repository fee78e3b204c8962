package org.dentary.custody.identity;

/** What is wrong with a label at receipt. Common practice at receiving desks, no source. */
public enum LabelProblem {
    UNLABELED("it came without a label"),
    LABEL_DISAGREES_WITH_LIST("its label and the list disagree"),
    LABEL_ILLEGIBLE("its label cannot be read"),
    WRONG_ID("it carries a wrong id"),
    OTHER("its label does not match");

    private final String words;

    LabelProblem(String words) {
        this.words = words;
    }

    /** The same in words, lower case, as a clause. */
    public String words() {
        return words;
    }
}
