package org.dentary.prevalence.truth;

import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One cell: the apparent prevalence as the prevalence report has it, and the true one behind it.
 *
 * @param group dimension to value, told as fields of the cell itself
 * @param counted animals with a final word on accepted tissue
 * @param detected those in which it was detected
 * @param prevalence apparent: detected / counted in [0, 1]; null: not sampled
 * @param lower lower limit of the apparent prevalence
 * @param upper upper limit of the apparent prevalence
 * @param raw the estimate as computed, possibly outside [0, 1]; null: not sampled
 * @param truePrevalence {@code raw} cut to [0, 1]
 * @param trueLower lower limit in [0, 1]; null also where the study allows none
 * @param trueUpper upper limit in [0, 1]
 * @param truncated whether {@code raw} lay outside [0, 1]
 * @param sentence all of it in plain words
 * @param testedOtherwise counted animals of the cell that were tested by nothing the set speaks of; null in an answer stored
 *     before this was told
 * @param pending animals of the cell whose result is pending
 * @param flags what to mind, as in the prevalence report
 */
public record TruthCell(
        @JsonIgnore Map<String, String> group,
        int counted,
        int detected,
        Double prevalence,
        Double lower,
        Double upper,
        Double raw,
        Double truePrevalence,
        Double trueLower,
        Double trueUpper,
        boolean truncated,
        String sentence,
        Integer testedOtherwise,
        int pending,
        List<String> flags) {
    /** A cell as it was told: what is not a figure, a sentence or a flag is a dimension. */
    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static TruthCell told(Map<String, Object> fields) {
        Map<String, Object> rest = new LinkedHashMap<>(fields);
        int counted = ((Number) rest.remove("counted")).intValue();
        int detected = ((Number) rest.remove("detected")).intValue();
        Double prevalence = share(rest, "prevalence");
        Double lower = share(rest, "lower");
        Double upper = share(rest, "upper");
        Double raw = share(rest, "raw");
        Double truth = share(rest, "truePrevalence");
        Double trueLower = share(rest, "trueLower");
        Double trueUpper = share(rest, "trueUpper");
        boolean truncated = (Boolean) rest.remove("truncated");
        String sentence = rest.remove("sentence").toString();
        Number otherwise = (Number) rest.remove("testedOtherwise");
        int pending = ((Number) rest.remove("pending")).intValue();
        List<String> flags =
                ((List<?>) rest.remove("flags")).stream().map(Object::toString).toList();
        Map<String, String> group = new LinkedHashMap<>();
        rest.forEach((dimension, value) -> group.put(dimension, value.toString()));
        return new TruthCell(
                group,
                counted,
                detected,
                prevalence,
                lower,
                upper,
                raw,
                truth,
                trueLower,
                trueUpper,
                truncated,
                sentence,
                otherwise == null ? null : Integer.valueOf(otherwise.intValue()),
                pending,
                flags);
    }

    private static Double share(Map<String, Object> fields, String name) {
        Object value = fields.remove(name);
        return value == null ? null : ((Number) value).doubleValue();
    }

    @JsonAnyGetter
    Map<String, String> groupFields() {
        return group;
    }

    /** The same with its dimensions in the order of the report. */
    TruthCell inOrder(List<String> by) {
        Map<String, String> ordered = new LinkedHashMap<>();
        by.stream().filter(group::containsKey).forEach(field -> ordered.put(field, group.get(field)));
        return new TruthCell(
                ordered,
                counted,
                detected,
                prevalence,
                lower,
                upper,
                raw,
                truePrevalence,
                trueLower,
                trueUpper,
                truncated,
                sentence,
                testedOtherwise,
                pending,
                flags);
    }

    /** Whether nobody was counted. */
    @JsonIgnore
    public boolean isNotSampled() {
        return counted == 0;
    }
}
