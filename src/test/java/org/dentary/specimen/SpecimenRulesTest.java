package org.dentary.specimen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import org.dentary.codes.Part;
import org.dentary.platform.problem.FieldProblem;
import org.junit.jupiter.api.Test;

class SpecimenRulesTest {
    private static final String TAKEN = "2026-11-14T08:00:00-06:00";
    private static final Instant NOW = Instant.parse("2026-11-14T20:00:00Z");

    @Test
    void aNodeUnderItsOwnSidesLabelIsRight() {
        assertEquals(List.of(), rules(specimen(Side.LEFT, TAKEN, Tissue.MEDIAL_RETROPHARYNGEAL_NODE), Part.NODE_LEFT));
        assertEquals(List.of(), rules(specimen(Side.BOTH, TAKEN, Tissue.MEDIAL_RETROPHARYNGEAL_NODE), Part.NODES));
        assertEquals(List.of(), rules(specimen(Side.NONE, TAKEN, Tissue.OBEX), Part.SPARE_1));
    }

    @Test
    void aLabelOfTheOtherSideIsRefused() {
        assertEquals(
                List.of("LABEL_OF_OTHER_SIDE"),
                rules(specimen(Side.RIGHT, TAKEN, Tissue.MEDIAL_RETROPHARYNGEAL_NODE), Part.NODE_LEFT));
        assertEquals(
                List.of("LABEL_OF_OTHER_SIDE"),
                rules(specimen(Side.LEFT, TAKEN, Tissue.MEDIAL_RETROPHARYNGEAL_NODE), Part.NODE_RIGHT));
    }

    @Test
    void papersAndBoxesHoldNoTissue() {
        for (Part part : List.of(Part.FORM, Part.STUB, Part.BOX, Part.SUBMISSION)) {
            assertEquals(List.of("PART_HOLDS_NO_TISSUE"), rules(specimen(Side.NONE, TAKEN, Tissue.OBEX), part));
        }
    }

    @Test
    void nothingIsTakenBeforeDeathOrInTheFuture() {
        assertEquals(
                List.of("BEFORE_DEATH"),
                rules(specimen(Side.LEFT, "2026-11-13T23:00:00-06:00", Tissue.OBEX), Part.NODE_LEFT));
        assertEquals(
                List.of("FUTURE"),
                rules(specimen(Side.LEFT, "2026-11-14T14:11:00-06:00", Tissue.OBEX), Part.NODE_LEFT));
        assertEquals(List.of(), rules(specimen(Side.LEFT, "2026-11-14T14:09:00-06:00", Tissue.OBEX), Part.NODE_LEFT));
    }

    @Test
    void aPieceIsNotOlderThanWhatItWasCutFrom() {
        SpecimenRules.Surroundings piece = around(Part.SPARE_1, Instant.parse("2026-11-14T14:30:00Z"));
        List<FieldProblem> problems = SpecimenRules.problems(specimen(Side.LEFT, TAKEN, Tissue.OBEX), piece, "");
        assertEquals(
                List.of("BEFORE_PARENT"),
                problems.stream().map(FieldProblem::rule).toList());
    }

    @Test
    void aTissueThatTheLabelDoesNotPromiseAndTheLateralNodeAreWarnedAbout() {
        assertTrue(SpecimenRules.warning(Part.OBEX, specimen(Side.NONE, TAKEN, Tissue.TONSIL))
                .isPresent());
        assertTrue(SpecimenRules.warning(Part.NODES, specimen(Side.BOTH, TAKEN, Tissue.LATERAL_RETROPHARYNGEAL_NODE))
                .isPresent());
        assertTrue(SpecimenRules.warning(Part.OBEX, specimen(Side.NONE, TAKEN, Tissue.OBEX))
                .isEmpty());
        assertTrue(SpecimenRules.warning(Part.SPARE_2, specimen(Side.NONE, TAKEN, Tissue.LUNG))
                .isEmpty());
    }

    private static List<String> rules(TakeSpecimen specimen, Part part) {
        return SpecimenRules.problems(specimen, around(part, null), "").stream()
                .map(FieldProblem::rule)
                .toList();
    }

    private static SpecimenRules.Surroundings around(Part part, Instant parentCollectedAt) {
        return new SpecimenRules.Surroundings(
                part,
                LocalDate.of(2026, 11, 14),
                ZoneId.of("America/Chicago"),
                parentCollectedAt,
                NOW,
                Duration.ofMinutes(10));
    }

    private static TakeSpecimen specimen(Side side, String at, Tissue tissue) {
        return new TakeSpecimen(
                "CODE",
                tissue,
                null,
                side,
                Preservation.FRESH_CHILLED,
                Condition.GOOD,
                OffsetDateTime.parse(at),
                null,
                null,
                null,
                null,
                null,
                null);
    }
}
