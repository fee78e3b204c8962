package org.dentary.result.outcome;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.result.FindingStatus;
import org.dentary.result.FindingWord;
import org.dentary.result.Stage;

/**
 * The outcome of an animal for one disease, from all findings on its tissue. The first of these that applies: detected,
 * suspect, pending, not detected, inconclusive, unsuitable, not tested. Stage, then tested date, decides between findings
 * on the same tissue; the order in which they arrived never does. Common practice (screen, confirm, then tell), no
 * source; the steps are the design's.
 */
final class OutcomeRules {
    /** Edition of these rules; stored with what they derive. */
    static final String VERSION = "1";

    /** Stage, then tested date; what is left over is settled by the word and the id, so that arrival never decides. */
    static final Comparator<TestFact> LATER = Comparator.comparingInt(TestFact::rank)
            .thenComparing(f -> f.testedOn() == null ? LocalDate.MIN : f.testedOn())
            .thenComparingInt(f -> weight(f.word()))
            .thenComparing(TestFact::id);

    private OutcomeRules() {}

    /**
     * Derives the outcome.
     *
     * @param findings every finding on the animal's tissue for the disease, in any order
     * @param tissues every specimen and piece of the animal
     */
    static Derived derive(List<TestFact> findings, List<TissueFact> tissues, PlanFacts plan) {
        return new OutcomeCase(standing(findings), tissues, plan).decide();
    }

    /** Findings that no other replaces, without cancelled ones and invalid runs. */
    private static List<TestFact> standing(List<TestFact> findings) {
        Set<UUID> corrected = findings.stream()
                .map(TestFact::corrects)
                .filter(id -> id != null)
                .collect(Collectors.toSet());
        List<TestFact> standing = findings.stream()
                .filter(f -> !corrected.contains(f.id()))
                .filter(f -> f.status() != FindingStatus.CANCELLED && f.word() != FindingWord.INVALID_RUN)
                .filter(f -> f.stage() != Stage.ADJUNCT || f.adjunctCounts())
                .toList();
        return standing.stream()
                .filter(f -> standing.stream().noneMatch(last -> isFinalOf(last, f)))
                .toList();
    }

    /**
     * Whether one is the final report of a test that the other reported as preliminary: same method, stage and tissue,
     * not tested earlier. A suspicion is not ended by a report that says nothing of the animal.
     */
    private static boolean isFinalOf(TestFact last, TestFact preliminary) {
        boolean suspicion = preliminary.word() == FindingWord.DETECTED || preliminary.word() == FindingWord.SUSPECT;
        return preliminary.status() == FindingStatus.PRELIMINARY
                && last.status().isFinal()
                && last.method().equals(preliminary.method())
                && last.stage() == preliminary.stage()
                && last.pool() == preliminary.pool()
                && last.specimens().equals(preliminary.specimens())
                && (last.word().speaksOfTheAnimal() || !suspicion)
                && (last.testedOn() == null
                        || preliminary.testedOn() == null
                        || !last.testedOn().isBefore(preliminary.testedOn()));
    }

    private static int weight(FindingWord word) {
        return switch (word) {
            case DETECTED -> 4;
            case SUSPECT -> 3;
            case INCONCLUSIVE -> 2;
            case NOT_DETECTED -> 1;
            default -> 0;
        };
    }
}
