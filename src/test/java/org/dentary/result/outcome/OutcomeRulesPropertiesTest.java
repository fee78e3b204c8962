package org.dentary.result.outcome;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.dentary.result.FindingStatus;
import org.dentary.result.FindingWord;
import org.dentary.result.Stage;

/** What holds for the outcome whatever a laboratory reports. */
class OutcomeRulesPropertiesTest {
    private static final List<TissueFact> TISSUES = List.of(
            new TissueFact("L", null, false, 1, 1, true, false),
            new TissueFact("R", null, false, 1, 1, true, false),
            new TissueFact("O", null, false, 0, 0, false, true),
            new TissueFact("P", "L", false, 1, 1, true, false));

    @Property(tries = 2_000, seed = "20261126")
    void anyOrderOfArrivalGivesTheSame(
            @ForAll("reports") List<TestFact> reports,
            @ForAll boolean alone,
            @ForAll boolean pools,
            @ForAll long seed) {
        PlanFacts plan = new PlanFacts(alone, pools, List.of());
        List<TestFact> arrived = numbered(reports);
        Derived first = OutcomeRules.derive(arrived, TISSUES, plan);
        List<TestFact> otherwise = new ArrayList<>(arrived);
        List<TissueFact> tissues = new ArrayList<>(TISSUES);
        Collections.shuffle(otherwise, new Random(seed));
        Collections.shuffle(tissues, new Random(seed));
        assertEquals(first, OutcomeRules.derive(otherwise, tissues, plan));
    }

    @Property(tries = 2_000, seed = "20261126")
    void aSuspicionThatNothingLaterAnswersIsNeverToldAsNotDetected(@ForAll("reports") List<TestFact> reports) {
        List<TestFact> early = numbered(reports.stream()
                .filter(f -> f.stage() == Stage.SCREENING || f.stage() == Stage.ADJUNCT)
                .filter(f -> f.corrects() == null)
                .toList());
        TestFact suspect = new TestFact(
                new UUID(1, 1),
                "METHOD_X",
                Stage.SCREENING,
                FindingWord.SUSPECT,
                FindingStatus.FINAL,
                LocalDate.of(2026, 11, 1),
                Set.of("L"),
                true,
                false,
                false,
                null,
                "left node");
        List<TestFact> with = new ArrayList<>(early);
        with.add(suspect);
        Outcome outcome = OutcomeRules.derive(with, TISSUES, new PlanFacts(false, true, List.of()))
                .outcome();
        assertEquals(Outcome.SUSPECT, outcome);
        assertNotEquals(Outcome.SUSPECT, outcome.shown(false));
    }

    /** Corrections point to an earlier place in the list, as ids are given there. */
    private static List<TestFact> numbered(List<TestFact> reports) {
        List<TestFact> numbered = new ArrayList<>();
        for (int i = 0; i < reports.size(); i++) {
            TestFact f = reports.get(i);
            boolean corrects = f.corrects() != null && i > 0;
            numbered.add(new TestFact(
                    new UUID(0, i),
                    f.method(),
                    f.stage(),
                    f.word(),
                    f.status(),
                    f.testedOn(),
                    f.specimens(),
                    f.accepted(),
                    f.pool(),
                    f.adjunctCounts(),
                    corrects ? new UUID(0, i - 1) : null,
                    f.where()));
        }
        return numbered;
    }

    @Provide
    Arbitrary<List<TestFact>> reports() {
        Arbitrary<TestFact> report = Combinators.combine(
                        Arbitraries.of(Stage.class),
                        Arbitraries.of(FindingWord.class),
                        Arbitraries.of(FindingStatus.class),
                        Arbitraries.integers().between(1, 4).injectNull(0.1),
                        Arbitraries.of("L", "R", "O", "P").set().ofMinSize(1).ofMaxSize(2),
                        Arbitraries.integers().between(0, 9),
                        Arbitraries.integers().between(0, 9))
                .as((stage, word, status, day, specimens, kind, link) -> new TestFact(
                        new UUID(0, 0),
                        "METHOD_" + stage,
                        stage,
                        word,
                        status,
                        day == null ? null : LocalDate.of(2026, 11, day),
                        specimens,
                        kind != 9,
                        kind == 8,
                        kind == 7,
                        link == 9 ? new UUID(9, 9) : null,
                        String.join("+", new java.util.TreeSet<>(specimens))));
        return report.list().ofMaxSize(7);
    }
}
