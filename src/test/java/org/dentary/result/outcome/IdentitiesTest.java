package org.dentary.result.outcome;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.dentary.result.FindingStatus;
import org.dentary.result.FindingWord;
import org.dentary.result.Stage;
import org.junit.jupiter.api.Test;

/** What refused and granted specimens do to an outcome; the design's rules, no source outside. */
class IdentitiesTest {
    private static final TissueFact LEFT = new TissueFact("LEFT", null, false, 1, 1, true, false);
    private static final TissueFact RIGHT = new TissueFact("RIGHT", null, false, 1, 1, true, false);
    private static final PlanFacts PLAN = new PlanFacts(false, false, List.of());

    private static TestFact finding(FindingWord word, String... specimens) {
        return new TestFact(
                UUID.randomUUID(),
                "ELISA",
                Stage.SCREENING,
                word,
                FindingStatus.FINAL,
                LocalDate.of(2026, 11, 20),
                Set.of(specimens),
                true,
                false,
                false,
                null,
                "node");
    }

    private static Derived derived(Identities identities, TestFact... findings) {
        List<TestFact> all = List.of(findings);
        return identities.told(
                OutcomeRules.derive(
                        identities.attributable(all), identities.attributableTissue(List.of(LEFT, RIGHT)), PLAN),
                all);
    }

    @Test
    void withoutExceptionsNothingChanges() {
        Derived plain = derived(Identities.NONE, finding(FindingWord.NOT_DETECTED, "LEFT"));
        assertEquals(Outcome.NOT_DETECTED, plain.outcome());
        assertEquals("", plain.footnotes());
        assertSame(Identities.NONE, Identities.of(List.of()));
    }

    @Test
    void aFindingInRefusedTissueIsLeftOutAlsoWhereItWasTestedTogetherWithOther() {
        Identities refused = new Identities(Set.of("LEFT"), Set.of());
        assertEquals(
                Outcome.NOT_TESTED,
                derived(refused, finding(FindingWord.NOT_DETECTED, "LEFT", "RIGHT"))
                        .outcome());
        Derived both =
                derived(refused, finding(FindingWord.SUSPECT, "LEFT"), finding(FindingWord.NOT_DETECTED, "RIGHT"));
        assertEquals(Outcome.NOT_DETECTED, both.outcome());
        assertTrue(both.review().contains("some animal has it"), both.review());
        assertNull(derived(refused, finding(FindingWord.NOT_DETECTED, "LEFT")).review());
    }

    @Test
    void anOrderOnRefusedTissueHoldsNothing() {
        TissueFact unreported = new TissueFact("LEFT", null, false, 1, 0, true, false);
        List<TestFact> right = List.of(finding(FindingWord.NOT_DETECTED, "RIGHT"));
        assertEquals(
                Outcome.PENDING,
                OutcomeRules.derive(right, List.of(unreported, RIGHT), PLAN).outcome());
        Identities refused = new Identities(Set.of("LEFT"), Set.of());
        assertEquals(
                Outcome.NOT_DETECTED,
                OutcomeRules.derive(right, refused.attributableTissue(List.of(unreported, RIGHT)), PLAN)
                        .outcome());
    }

    @Test
    void aGrantedSpecimenCountsWithItsFootnoteWhateverWasFound() {
        Identities granted = new Identities(Set.of(), Set.of("LEFT"));
        for (FindingWord word : List.of(FindingWord.NOT_DETECTED, FindingWord.SUSPECT, FindingWord.UNSUITABLE)) {
            assertEquals(
                    Identities.FOOTNOTE, derived(granted, finding(word, "LEFT")).footnotes(), word.name());
        }
        assertEquals(Identities.FOOTNOTE, derived(granted).footnotes(), "and before anything was found");
    }

    @Test
    void ofAWithheldLineOnlyTheExceptionIsTold() {
        assertEquals(Identities.FOOTNOTE, Identities.footnotesOfWithheld("IDENTITY_EXCEPTION SCREENING_ALONE"));
        assertEquals("", Identities.footnotesOfWithheld("SCREENING_ALONE"));
    }
}
