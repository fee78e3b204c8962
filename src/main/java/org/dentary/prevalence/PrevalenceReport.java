package org.dentary.prevalence;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Map;
import org.dentary.prevalence.cut.DataCutView;
import org.dentary.prevalence.question.Step;

/**
 * Prevalence among the animals of a season, with everything that is needed to read it.
 *
 * @param season season code
 * @param disease disease code
 * @param species species code
 * @param by dimensions of the cells, in order
 * @param columns the last of them where it stands as columns; left out: each cell is a row
 * @param interval method of the intervals
 * @param confidence two-sided level
 * @param cut the data cut it stands on, or null
 * @param asOf when its lines were read, RFC 3339
 * @param with other seasons beside it and the cuts they stand on; left out where there are none
 * @param scope which animals count, by field
 * @param incomplete whether more is pending than the plan allows
 * @param pendingShare pending / (pending + counted) in [0, 1]; null if both are 0
 * @param cells in the order of the dimensions' values; a class never sampled is there with nulls
 * @param rowTotals where there are columns: each row over all of them; left out otherwise
 * @param columnTotals where there are columns: each over all rows; left out otherwise
 * @param total all cells together
 * @param takenToCounted how many animals leave at each step; all but the first add up to the first
 * @param footnotes what the outcomes of some counted animals rest on; empty for none
 * @param sexWithoutBodilyEvidence counted animals whose sex rests on head, tag or report alone
 * @param unknownAge counted animals without an age class, and why
 * @param methods each method with the publication it comes from
 * @param notes what the figures are and are not, in sentences
 * @param warnings what was chosen off the default, and what makes a figure weak
 * @param cautions reviewed cautions that go with the figures
 */
public record PrevalenceReport(
        String season,
        String disease,
        String species,
        List<String> by,
        @JsonInclude(JsonInclude.Include.NON_NULL) String columns,
        String interval,
        double confidence,
        CutName cut,
        String asOf,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<OtherSeason> with,
        Map<String, List<String>> scope,
        boolean incomplete,
        Double pendingShare,
        List<PrevalenceCell> cells,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<PrevalenceCell> rowTotals,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<PrevalenceCell> columnTotals,
        PrevalenceCell total,
        List<StepCount> takenToCounted,
        List<Footnote> footnotes,
        Share sexWithoutBodilyEvidence,
        UnknownAge unknownAge,
        List<Method> methods,
        List<String> notes,
        List<String> warnings,
        List<String> cautions) {
    /** The note on multiplicity; a comparison of the same animals says something else in its place. */
    public static final String NOTHING_TESTED = "No two figures of this table are tested against each other: no p-value"
            + " stands behind it, and none is adjusted.";

    /** An answer stored before a field was there has none of it. */
    public PrevalenceReport {
        cells = inOrder(cells, by);
        rowTotals = inOrder(rowTotals, by);
        columnTotals = inOrder(columnTotals, by);
        with = with == null ? List.of() : with;
        footnotes = footnotes == null ? List.of() : footnotes;
        methods = methods == null ? List.of() : methods;
        sexWithoutBodilyEvidence = sexWithoutBodilyEvidence == null ? Share.of(0, 0) : sexWithoutBodilyEvidence;
        unknownAge = unknownAge == null ? new UnknownAge(Share.of(0, 0), false, List.of()) : unknownAge;
    }

    private static List<PrevalenceCell> inOrder(List<PrevalenceCell> cells, List<String> by) {
        return cells == null
                ? List.of()
                : cells.stream().map(cell -> cell.inOrder(by)).toList();
    }

    /** Which cut a report stands on; {@code superseded} is the reason why it should no longer be used, or null. */
    public record CutName(String id, String name, String madeAt, String superseded) {
        static CutName of(DataCutView cut) {
            return new CutName(cut.id(), cut.name(), cut.madeAt().toString(), cut.supersededReason());
        }
    }

    /** Another season; {@code cut} is null where it is live. */
    public record OtherSeason(String season, CutName cut) {}

    /** How many animals leave at a step. */
    public record StepCount(Step step, int animals) {
        /** The step as a row is headed. */
        @JsonIgnore
        public String getWords() {
            return step.words();
        }
    }

    /** A coded footnote, how many counted animals it is about, and what it says. */
    public record Footnote(String code, int animals, String text) {}

    /** So many of so many; {@code share} in [0, 1] is null where {@code of} is 0. */
    public record Share(int animals, int of, Double share) {
        static Share of(int animals, int of) {
            return new Share(animals, of, of == 0 ? null : (double) animals / of);
        }
    }

    /** A method and the publication it comes from; {@code source} is "common practice, no source" where there is none. */
    public record Method(String what, String source) {}

    /**
     * Counted animals without an age class.
     *
     * @param aboveThreshold whether their share is above the plan's, so that a note says so
     * @param rows by sex, source and reason, most first
     */
    public record UnknownAge(Share total, boolean aboveThreshold, List<UnknownAgeRow> rows) {}

    /**
     * Counted animals without an age class that are alike.
     *
     * @param reason {@code DISPUTED}, {@code READ_WITHOUT_CLASS}, {@code COLLECTED_TO_READ}, {@code PHOTO_TO_READ},
     *     {@code NOT_EXAMINED} or {@code UNKNOWN}
     * @param words why the jaw was not examined, as given at intake; empty otherwise
     */
    public record UnknownAgeRow(String sex, String mortalitySource, String reason, String words, Integer animals) {
        /** The reason as a table says it. */
        @JsonIgnore
        public String getReasonWords() {
            String told = switch (reason) {
                case "DISPUTED" -> "Readings differ, not settled";
                case "READ_WITHOUT_CLASS" -> "Jaw read, no class told";
                case "COLLECTED_TO_READ" -> "Jaw collected, no class from it yet";
                case "PHOTO_TO_READ" -> "Photograph taken, no class from it yet";
                case "NOT_EXAMINED" -> "Jaw not examined";
                default -> "Not recorded";
            };
            return words.isEmpty() ? told : told + ": " + words;
        }

        /** The sex as a table says it. */
        @JsonIgnore
        public String getSexWords() {
            return Words.of(sex);
        }

        /** The source as a table says it. */
        @JsonIgnore
        public String getSourceWords() {
            return Words.of(mortalitySource);
        }
    }
}
