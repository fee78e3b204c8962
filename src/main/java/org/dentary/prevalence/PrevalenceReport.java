package org.dentary.prevalence;

import java.util.List;
import java.util.Map;

/**
 * Prevalence among the animals of a season, with everything that is needed to read it.
 *
 * @param season season code
 * @param disease disease code
 * @param species species code
 * @param by dimensions of the cells, in order
 * @param interval method of the intervals
 * @param confidence two-sided level
 * @param cut the data cut it stands on, or null
 * @param asOf when its lines were read, RFC 3339
 * @param scope which animals count, by field
 * @param incomplete whether more is pending than the plan allows
 * @param pendingShare pending / (pending + counted) in [0, 1]; null if both are 0
 * @param cells in the order of the dimensions' values; a class never sampled is there with nulls
 * @param total all cells together
 * @param takenToCounted how many animals leave at each step; all but the first add up to the first
 * @param notes methods, sources and footnotes, in words
 * @param warnings what was chosen off the default, and what makes a figure weak
 * @param cautions reviewed cautions that go with the figures
 */
public record PrevalenceReport(
        String season,
        String disease,
        String species,
        List<String> by,
        String interval,
        double confidence,
        CutName cut,
        String asOf,
        Map<String, List<String>> scope,
        boolean incomplete,
        Double pendingShare,
        List<PrevalenceCell> cells,
        PrevalenceCell total,
        List<StepCount> takenToCounted,
        List<String> notes,
        List<String> warnings,
        List<String> cautions) {
    /** Which cut a report stands on; {@code superseded} is the reason why it should no longer be used, or null. */
    public record CutName(String id, String name, String madeAt, String superseded) {}

    /** How many animals leave at a step. */
    public record StepCount(Step step, int animals) {
        /** The step as a row is headed. */
        @com.fasterxml.jackson.annotation.JsonIgnore
        public String getWords() {
            return step.words();
        }
    }
}
