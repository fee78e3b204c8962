package org.dentary.submission.packing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.dentary.plan.AcceptanceView;
import org.dentary.platform.problem.FieldProblem;
import org.junit.jupiter.api.Test;

/**
 * What stops a tube at the bench. That laboratories differ over fresh, frozen and fixed tissue, and that rules are
 * checked at packing and not at receipt, is common practice, no source; the days are invented.
 */
class PackingRulesTest {
    private static final LocalDate COLLECTED = LocalDate.of(2026, 11, 14);
    private static final String NODE = "MEDIAL_RETROPHARYNGEAL_NODE";
    private static final List<AcceptanceView> RULES = List.of(
            rule(NODE, "FRESH_CHILLED", "LEFT", 3),
            rule(NODE, "FROZEN", null, 14),
            rule("OBEX", "FORMALIN", null, null));

    @Test
    void takesAFreshLeftNodeOnItsLastDay() {
        assertEquals(List.of(), laboratory(piece(NODE, "LEFT", "FRESH_CHILLED"), 3));
    }

    @Test
    void refusesItTheDayAfterAndSaysWhoseLimitItIs() {
        FieldProblem fault = only(laboratory(piece(NODE, "LEFT", "FRESH_CHILLED"), 4));
        assertEquals("TOO_OLD", fault.rule());
        assertEquals("code", fault.field());
        assertTrue(
                fault.message().startsWith("LAB takes it up to 3 days from collection; this was collected 2026-11-14"),
                fault.message());
        assertTrue(fault.message().contains("4 days ago"), fault.message());
    }

    @Test
    void countsDaysOfTheWayThatItIsKept() {
        assertEquals(List.of(), laboratory(piece(NODE, "LEFT", "FROZEN"), 14));
        assertEquals(
                "TOO_OLD", only(laboratory(piece(NODE, "LEFT", "FROZEN"), 15)).rule());
    }

    @Test
    void keepsFormalinAndColdTissueInBoxesOfTheirOwn() {
        List<PackedView> packed = List.of(packed("COLD", "B1", "FROZEN"), packed("WET", "B2", "FORMALIN"));
        FieldProblem fault = only(PackingRules.apart(piece(NODE, "LEFT", "FORMALIN"), "B1", packed));
        assertEquals("FORMALIN_APART", fault.rule());
        assertEquals("box", fault.field());
        assertTrue(fault.message().startsWith("box B1 holds 1 kept as frozen, this is formalin"), fault.message());
        assertEquals(
                "FORMALIN_APART",
                only(PackingRules.apart(piece(NODE, "LEFT", "FRESH_CHILLED"), "B2", packed))
                        .rule());
        assertEquals(List.of(), PackingRules.apart(piece(NODE, "LEFT", "FORMALIN"), "B2", packed));
        assertEquals(List.of(), PackingRules.apart(piece(NODE, "LEFT", "FRESH_CHILLED"), "B1", packed));
        assertEquals(List.of(), PackingRules.apart(piece(NODE, "LEFT", "DRY"), "B2", packed), "dry tissue is not cold");
        assertEquals(List.of(), PackingRules.apart(piece(NODE, "LEFT", "FORMALIN"), null, packed), "in no box");
    }

    private static PackedView packed(String code, String box, String preservation) {
        return new PackedView(
                code,
                box,
                NODE,
                "LEFT",
                preservation,
                COLLECTED,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                false);
    }

    @Test
    void letsTissueWithoutALimitBeOfAnyAge() {
        assertEquals(List.of(), laboratory(piece("OBEX", "NONE", "FORMALIN"), 3000));
    }

    @Test
    void takesTheLongestDaysWhereTwoMethodsDiffer() {
        List<AcceptanceView> two = List.of(rule(NODE, "FROZEN", null, 5), rule(NODE, "FROZEN", null, 9));
        PackingFacts piece = piece(NODE, "LEFT", "FROZEN");
        assertEquals(List.of(), PackingRules.laboratory(piece, "LAB", two, COLLECTED.plusDays(9)));
        FieldProblem fault = only(PackingRules.laboratory(piece, "LAB", two, COLLECTED.plusDays(10)));
        assertTrue(fault.message().contains("up to 9 days"), fault.message());
    }

    @Test
    void refusesTissueThatIsNotTakenAndNamesWhatIs() {
        FieldProblem fault = only(laboratory(piece("EAR", "LEFT", "FRESH_CHILLED"), 1));
        assertEquals("TISSUE_NOT_ACCEPTED", fault.rule());
        assertTrue(fault.message().contains("does not take ear"), fault.message());
        assertTrue(fault.message().contains("it takes medial retropharyngeal node, obex"), fault.message());
    }

    @Test
    void refusesEverythingWhereNoRuleIsInForce() {
        PackingFacts piece = piece(NODE, "LEFT", "FRESH_CHILLED");
        assertEquals(
                "TISSUE_NOT_ACCEPTED",
                only(PackingRules.laboratory(piece, "LAB", List.of(), COLLECTED))
                        .rule());
    }

    @Test
    void refusesANodeInFormalinAndSaysHowItMayBeKept() {
        FieldProblem fault = only(laboratory(piece(NODE, "LEFT", "FORMALIN"), 1));
        assertEquals("PRESERVATION_NOT_ACCEPTED", fault.rule());
        assertTrue(fault.message().contains("fresh chilled, frozen, not formalin"), fault.message());
    }

    @Test
    void refusesTheOtherSideOnlyWhereTheRuleNamesOne() {
        FieldProblem fault = only(laboratory(piece(NODE, "RIGHT", "FRESH_CHILLED"), 1));
        assertEquals("SIDE_NOT_ACCEPTED", fault.rule());
        assertTrue(fault.message().contains("side left, this is right"), fault.message());
        assertEquals(List.of(), laboratory(piece(NODE, "RIGHT", "FROZEN"), 1));
    }

    @Test
    void recordsNothingThatWasPackedBeforeItWasCollected() {
        PackingFacts piece = piece(NODE, "LEFT", "FROZEN");
        FieldProblem fault = only(PackingRules.day(with(piece, COLLECTED.minusDays(1), "")));
        assertEquals("PACKED_BEFORE_COLLECTED", fault.rule());
        assertEquals("packedAt", fault.field());
        assertEquals(List.of(), PackingRules.day(piece));
        assertEquals(List.of(), PackingRules.record(piece));
    }

    @Test
    void recordsNothingThatLiesInAnotherOpenSubmission() {
        FieldProblem fault = only(PackingRules.record(facts(NODE, "LEFT", "FROZEN", false, 41L)));
        assertEquals("IN_ANOTHER_SUBMISSION", fault.rule());
        assertTrue(fault.message().contains("submission 41"), fault.message());
    }

    @Test
    void recordsNothingOfAnAnimalWhoseSwappedLabelIsOpen() {
        FieldProblem fault = only(PackingRules.record(facts(NODE, "LEFT", "FROZEN", true, null)));
        assertEquals("NOT_ATTRIBUTABLE", fault.rule());
    }

    @Test
    void namesEveryFaultOfTheRecordAtOnce() {
        List<FieldProblem> faults = PackingRules.record(new PackingFacts(
                "CODE",
                "KIT",
                NODE,
                "LEFT",
                "FROZEN",
                "GOOD",
                COLLECTED,
                COLLECTED,
                "ADULT",
                "MALE",
                false,
                true,
                41L,
                false,
                COLLECTED,
                true,
                "DESTROYED",
                ""));
        assertEquals(
                List.of("IN_ANOTHER_SUBMISSION", "ENTERED_IN_ERROR", "NOT_ATTRIBUTABLE", "DESTROYED"),
                faults.stream().map(FieldProblem::rule).toList());
    }

    /** A reason given at packing is about what spoke then; what was packed before rules were kept has passed them all. */
    @Test
    void aReasonPassesTheRulesItWasGivenFor() {
        PackingFacts piece = piece(NODE, "LEFT", "FROZEN");
        assertEquals(false, piece.isPassed("TOO_OLD"));
        assertEquals(true, with(piece, COLLECTED, "TOO_OLD FORMALIN_APART").isPassed("TOO_OLD"));
        assertEquals(false, with(piece, COLLECTED, "TOO_OLD").isPassed("TOO_YOUNG"));
        assertEquals(true, with(piece, COLLECTED, "*").isPassed("TOO_YOUNG"));
    }

    private static PackingFacts with(PackingFacts f, LocalDate day, String passed) {
        return new PackingFacts(
                f.code(),
                f.kit(),
                f.tissue(),
                f.side(),
                f.preservation(),
                f.condition(),
                f.collectedOn(),
                f.keptSince(),
                f.ageClass(),
                f.sex(),
                f.archived(),
                f.excluded(),
                f.openElsewhere(),
                f.here(),
                day,
                f.enteredInError(),
                f.lastKind(),
                passed);
    }

    private static List<FieldProblem> laboratory(PackingFacts piece, int daysLater) {
        return PackingRules.laboratory(piece, "LAB", RULES, COLLECTED.plusDays(daysLater));
    }

    private static FieldProblem only(List<FieldProblem> faults) {
        assertEquals(1, faults.size(), faults.toString());
        return faults.get(0);
    }

    private static PackingFacts piece(String tissue, String side, String preservation) {
        return facts(tissue, side, preservation, false, null);
    }

    /** What a laboratory asks beyond tissue and days: time in the preservation, age class. Common practice, no source. */
    @Test
    void refusesWhatIsKeptTooLongTooYoungOrOfUnknownAge() {
        assertEquals(List.of(), more("ADULT", COLLECTED, 3, "YEARLING", true));
        assertEquals(List.of("KEPT_TOO_LONG"), more("ADULT", COLLECTED.minusDays(1), 3, null, false));
        assertEquals(List.of("TOO_YOUNG"), more("FAWN", COLLECTED, null, "YEARLING", true));
        assertEquals(List.of(), more("YEARLING", COLLECTED, null, "YEARLING", true));
        assertEquals(List.of("AGE_UNKNOWN"), more("UNKNOWN", COLLECTED, null, "YEARLING", true));
        assertEquals(List.of(), more("UNKNOWN", COLLECTED, null, "YEARLING", false));
    }

    private static List<String> more(
            String age, java.time.LocalDate keptSince, Integer maxDaysKept, String youngest, boolean unknownStops) {
        PackingFacts specimen = new PackingFacts(
                "CODE",
                "KIT",
                "OBEX",
                "NONE",
                "FROZEN",
                "GOOD",
                COLLECTED.minusDays(9),
                keptSince,
                age,
                "MALE",
                false,
                false,
                null,
                false,
                COLLECTED,
                false,
                "COLLECTED",
                "");
        AcceptanceView rule = new AcceptanceView(
                "LAB",
                "METHOD",
                "OBEX",
                "FROZEN",
                null,
                20,
                maxDaysKept,
                youngest,
                unknownStops,
                "jar",
                COLLECTED.minusYears(1),
                null);
        return PackingRules.laboratory(specimen, "LAB", List.of(rule), COLLECTED.plusDays(3)).stream()
                .map(org.dentary.platform.problem.FieldProblem::rule)
                .toList();
    }

    private static PackingFacts facts(
            String tissue, String side, String preservation, boolean excluded, Long openElsewhere) {
        return new PackingFacts(
                "CODE",
                "KIT",
                tissue,
                side,
                preservation,
                "GOOD",
                COLLECTED,
                COLLECTED,
                "ADULT",
                "MALE",
                false,
                excluded,
                openElsewhere,
                false,
                COLLECTED,
                false,
                "COLLECTED",
                "");
    }

    private static AcceptanceView rule(String tissue, String preservation, String side, Integer maxDays) {
        return new AcceptanceView(
                "LAB",
                "METHOD",
                tissue,
                preservation,
                side,
                maxDays,
                null,
                null,
                false,
                null,
                COLLECTED.minusYears(1),
                null);
    }
}
