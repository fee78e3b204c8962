package org.dentary.result.outcome;

import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.result.FindingStatus;
import org.dentary.result.FindingWord;
import org.dentary.result.Stage;

/**
 * A finding as the outcome rules see it.
 *
 * @param specimens this animal's specimens that it names; never empty
 * @param accepted whether the method's word counts on that tissue
 * @param pool whether it names specimens of other animals too
 * @param adjunctCounts whether the plan lets this method's adjunct findings move an outcome
 * @param corrects the finding it replaces, or null
 * @param where tissue and side in words, such as "left node"
 */
record TestFact(
        UUID id,
        String method,
        Stage stage,
        FindingWord word,
        FindingStatus status,
        LocalDate testedOn,
        Set<String> specimens,
        boolean accepted,
        boolean pool,
        boolean adjunctCounts,
        UUID corrects,
        String where) {
    TestFact {
        specimens = Set.copyOf(specimens);
    }

    /** Where it ranks among the stages; an adjunct that counts ranks as a screening. */
    int rank() {
        return stage == Stage.ADJUNCT ? Stage.SCREENING.ordinal() : stage.ordinal();
    }

    /** As an explanation names it. */
    String told() {
        return word.words() + ": " + where + ", " + stage.name().toLowerCase(java.util.Locale.ROOT) + " " + method
                + ", "
                + status.name().toLowerCase(java.util.Locale.ROOT)
                + (testedOn == null ? "" : ", tested " + testedOn);
    }

    /** One finding, read as a row for each of its specimens. */
    static TestFact of(List<OutcomeQueries.Finding> same, List<String> adjuncts) {
        OutcomeQueries.Finding f = same.get(0);
        return new TestFact(
                UUID.fromString(f.id()),
                f.method(),
                Stage.valueOf(f.stage()),
                FindingWord.valueOf(f.finding()),
                FindingStatus.valueOf(f.status()),
                f.testedOn(),
                same.stream().map(OutcomeQueries.Finding::code).collect(Collectors.toSet()),
                same.stream().allMatch(OutcomeQueries.Finding::accepted),
                f.pool(),
                adjuncts.contains(f.method()),
                f.corrects() == null ? null : UUID.fromString(f.corrects()),
                same.stream().map(TestFact::where).collect(Collectors.toCollection(LinkedHashSet::new)).stream()
                        .collect(Collectors.joining(" and ")));
    }

    private static String where(OutcomeQueries.Finding f) {
        String tissue = f.tissue().endsWith("_NODE")
                ? "node"
                : f.tissue().toLowerCase(Locale.ROOT).replace('_', ' ');
        return switch (f.side()) {
            case "LEFT" -> "left " + tissue;
            case "RIGHT" -> "right " + tissue;
            case "BOTH" -> "both " + tissue + "s";
            default -> tissue;
        };
    }
}
