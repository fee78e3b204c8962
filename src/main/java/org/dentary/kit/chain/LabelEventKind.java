package org.dentary.kit.chain;

/** What can happen to labels as labels, one word per event on a block's chain. */
public enum LabelEventKind {
    LABEL_ISSUED("issued"),
    LABEL_REPRINTED("printed again"),
    LABEL_VOIDED("voided");

    private final String words;

    LabelEventKind(String words) {
        this.words = words;
    }

    /** The event in plain words, lower case. */
    public String words() {
        return words;
    }
}
