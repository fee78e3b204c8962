package org.dentary.prevalence.truth;

import java.util.List;
import java.util.Map;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.performance.PerformanceSet;

/**
 * True prevalence among the animals of a season beside the apparent one, with everything that is needed to read it.
 *
 * @param season season code
 * @param disease disease code
 * @param species species code
 * @param by dimensions of the cells, in order
 * @param interval method of the apparent prevalence's intervals
 * @param confidence two-sided level of every interval
 * @param cut the data cut it stands on, or null
 * @param asOf when its lines were read, RFC 3339
 * @param scope which animals count, by field
 * @param filter columns that are filtered, by field; empty for none
 * @param incomplete whether more is pending than the plan allows
 * @param pendingShare pending / (pending + counted) in [0, 1]; null if both are 0
 * @param performance the set of test performance chosen
 * @param tested which tests the counted animals had, against that set
 * @param cells in the order of the dimensions' values; a class never sampled is there with nulls
 * @param total all counted animals together, not the cells added up
 * @param takenToCounted how many animals leave at each step; all but the first add up to the first
 * @param methods each method with the publication it comes from
 * @param notes what the figures are and are not, in sentences
 * @param warnings what makes a figure weak, and what was chosen off the default
 * @param cautions reviewed cautions that go with the figures
 */
public record TruthReport(
        String season,
        String disease,
        String species,
        List<String> by,
        String interval,
        double confidence,
        PrevalenceReport.CutName cut,
        String asOf,
        Map<String, List<String>> scope,
        Map<String, List<String>> filter,
        boolean incomplete,
        Double pendingShare,
        PerformanceSet performance,
        Tested tested,
        List<TruthCell> cells,
        TruthCell total,
        List<PrevalenceReport.StepCount> takenToCounted,
        List<PrevalenceReport.Method> methods,
        List<String> notes,
        List<String> warnings,
        List<String> cautions) {
    public TruthReport {
        cells = cells.stream().map(cell -> cell.inOrder(by)).toList();
    }
}
