package org.dentary.result.outcome;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.result.FindingStatus;
import org.dentary.result.FindingWord;
import org.dentary.result.Stage;
import org.dentary.result.outcome.OutcomeCases.OutcomeCase;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The outcome rules against a table of cases, each with the step of the rules that it shows. */
class OutcomeRulesTest {
    @TestFactory
    Stream<DynamicTest> decidesAsExpected() {
        return OutcomeCases.all().stream().map(one -> DynamicTest.dynamicTest(one.desc(), () -> check(one)));
    }

    private static void check(OutcomeCase one) {
        Derived derived = one.derive();
        assertEquals(one.outcome(), derived.outcome(), derived::explanation);
        assertFalse(derived.explanation().isBlank());
        assertEquals(one.footnotes(), derived.footnotes());
        if (one.review().isEmpty()) {
            assertNull(derived.review());
        } else {
            assertTrue(derived.review() != null && derived.review().contains(one.review()), derived::review);
        }
    }

    @Test
    void theTableShowsEveryOutcomeInOverSixtyDifferentCasesWithTheirSources() {
        List<OutcomeCase> cases = OutcomeCases.all();
        assertTrue(cases.size() >= 60, () -> cases.size() + " cases");
        assertEquals(
                cases.size(), cases.stream().map(OutcomeCase::desc).distinct().count());
        assertEquals(
                EnumSet.allOf(Outcome.class),
                cases.stream()
                        .map(OutcomeCase::outcome)
                        .collect(Collectors.toCollection(() -> EnumSet.noneOf(Outcome.class))));
        assertTrue(cases.stream().noneMatch(one -> one.source().isBlank()));
    }

    @Test
    void explainsInWords() {
        TestFact found = new TestFact(
                new java.util.UUID(0, 1),
                "IHC",
                Stage.CONFIRMATORY,
                FindingWord.DETECTED,
                FindingStatus.FINAL,
                java.time.LocalDate.of(2026, 12, 3),
                Set.of("L"),
                true,
                false,
                false,
                null,
                "left node");
        Derived derived = OutcomeRules.derive(
                List.of(found),
                List.of(new TissueFact("L", null, false, 1, 1, true, false)),
                new PlanFacts(false, false, List.of()));
        assertEquals("detected: left node, confirmatory IHC, final, tested 2026-12-03", derived.explanation());
    }
}
