package org.dentary.prevalence;

import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;
import java.util.Map;

/**
 * One cell of a report.
 *
 * @param group dimension to value, told as fields of the cell itself
 * @param counted animals with a final word on accepted tissue
 * @param detected those in which it was detected
 * @param prevalence detected / counted in [0, 1]; null: not sampled
 * @param lower lower limit; null: not sampled
 * @param upper upper limit; null: not sampled
 * @param pending animals of the cell whose result is pending
 * @param flags what to mind: {@code NOT_SAMPLED}, {@code FEW_COUNTED} (below 30), {@code FEW_DETECTED} (1 to 4)
 */
public record PrevalenceCell(
        @JsonIgnore Map<String, String> group,
        int counted,
        int detected,
        Double prevalence,
        Double lower,
        Double upper,
        int pending,
        List<String> flags) {
    @JsonAnyGetter
    Map<String, String> groupFields() {
        return group;
    }

    /** Whether nobody was counted. */
    @JsonIgnore
    public boolean isNotSampled() {
        return counted == 0;
    }
}
