package org.dentary.prevalence;

import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dentary.prevalence.table.CellFlag;

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
 * @param pendingShare pending / (pending + counted) in [0, 1]; null where both are 0
 * @param flags what to mind, as {@link CellFlag} names them
 */
public record PrevalenceCell(
        @JsonIgnore Map<String, String> group,
        int counted,
        int detected,
        Double prevalence,
        Double lower,
        Double upper,
        int pending,
        Double pendingShare,
        List<String> flags) {
    /** A cell as it was told: what is not a figure or a flag is a dimension. */
    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static PrevalenceCell told(Map<String, Object> fields) {
        Map<String, Object> rest = new LinkedHashMap<>(fields);
        int counted = ((Number) rest.remove("counted")).intValue();
        int detected = ((Number) rest.remove("detected")).intValue();
        Double prevalence = share(rest.remove("prevalence"));
        Double lower = share(rest.remove("lower"));
        Double upper = share(rest.remove("upper"));
        int pending = ((Number) rest.remove("pending")).intValue();
        Double pendingShare = share(rest.remove("pendingShare"));
        List<String> flags =
                ((List<?>) rest.remove("flags")).stream().map(Object::toString).toList();
        Map<String, String> group = new LinkedHashMap<>();
        rest.forEach((dimension, value) -> group.put(dimension, value.toString()));
        return new PrevalenceCell(group, counted, detected, prevalence, lower, upper, pending, pendingShare, flags);
    }

    private static Double share(Object value) {
        return value == null ? null : ((Number) value).doubleValue();
    }

    @JsonAnyGetter
    Map<String, String> groupFields() {
        return group;
    }

    /** The same with its dimensions in the order of the report. */
    PrevalenceCell inOrder(List<String> by) {
        Map<String, String> ordered = new LinkedHashMap<>();
        by.stream().filter(group::containsKey).forEach(field -> ordered.put(field, group.get(field)));
        return new PrevalenceCell(ordered, counted, detected, prevalence, lower, upper, pending, pendingShare, flags);
    }

    /** Whether nobody was counted. */
    @JsonIgnore
    public boolean isNotSampled() {
        return counted == 0;
    }

    /** What stands in the place of a figure where nobody was counted; how many wait for results stands beside it. */
    public static String uncounted(int pending) {
        return pending == 0 ? "not sampled" : "no result yet";
    }
}
