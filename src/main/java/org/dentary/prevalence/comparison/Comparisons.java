package org.dentary.prevalence.comparison;

import java.util.List;
import java.util.Map;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.PrevalenceReport.CutName;

/**
 * All comparisons of one question.
 *
 * @param season season code
 * @param disease disease code
 * @param species species code
 * @param confidence two-sided level of every interval; a test decides at 1 - confidence after adjustment
 * @param cut the data cut it stands on, or null
 * @param asOf when its lines were read, RFC 3339
 * @param with the other season, or null
 * @param herd the herd structure, or null
 * @param ages mean age in years by age class as stated, for the trend
 * @param scope which animals count, by field
 * @param incomplete whether more is pending than the plan allows
 * @param cells the counts by age class and sex that all rests on
 * @param otherCells those of the other season; empty without one
 * @param comparisons in the order of their kinds
 * @param multiplicity how many tests there are and how that was allowed for
 * @param notes methods, sources and footnotes, in words
 * @param warnings what was chosen off the default, and what makes a figure weak
 * @param cautions reviewed cautions that go with the figures
 */
public record Comparisons(
        String season,
        String disease,
        String species,
        double confidence,
        CutName cut,
        String asOf,
        OtherSeason with,
        HerdStructure herd,
        Map<String, Double> ages,
        Map<String, List<String>> scope,
        boolean incomplete,
        List<PrevalenceCell> cells,
        List<PrevalenceCell> otherCells,
        List<Comparison> comparisons,
        Multiplicity multiplicity,
        List<String> notes,
        List<String> warnings,
        List<String> cautions) {
    /** The season compared with, the cut it stands on or null, and when it was read. */
    public record OtherSeason(String season, CutName cut, String asOf) {}

    /** How many tests decide, and what was done about their number. */
    public record Multiplicity(int tests, String method, String sentence) {}
}
