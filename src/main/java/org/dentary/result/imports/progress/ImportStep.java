package org.dentary.result.imports.progress;

/** What a large import is at; each takes its share of the whole. */
public enum ImportStep {
    READING("reading the file", 0, 15),
    STORING("storing the lines", 15, 60),
    CHECKING("holding the lines against what is recorded", 60, 100),
    WRITING("writing the findings", 10, 20),
    OUTCOMES("deriving the animals’ outcomes", 20, 100);

    private final String words;
    private final int from;
    private final int to;

    ImportStep(String words, int from, int to) {
        this.words = words;
        this.from = from;
        this.to = to;
    }

    /** As the page says it. */
    public String words() {
        return words;
    }

    /** How much of the whole is behind, in percent from 0 to 99: done itself is never a step. */
    int percent(int done, int total) {
        int begins = this == CHECKING && total == 0 ? 0 : from;
        return Math.min(99, begins + (total == 0 ? 0 : (int) ((long) (to - begins) * done / total)));
    }
}
