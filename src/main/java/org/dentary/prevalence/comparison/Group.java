package org.dentary.prevalence.comparison;

import com.fasterxml.jackson.annotation.JsonIgnore;
import org.dentary.prevalence.Words;

/**
 * One side of a comparison.
 *
 * @param label who they are, as a sentence names them
 * @param counted animals with a final word
 * @param detected those in which it was detected
 * @param prevalence detected / counted in [0, 1]; null if nobody was counted
 */
public record Group(String label, int counted, int detected, Double prevalence) {
    static Group of(String label, int counted, int detected) {
        return new Group(label, counted, detected, counted == 0 ? null : (double) detected / counted);
    }

    /** {@code 12 of 80 males (15.0 %)}. */
    @JsonIgnore
    String told() {
        return detected + " of " + counted + " " + label
                + (counted == 0 ? "" : " (" + Words.percent(prevalence, counted) + ")");
    }
}
