package org.dentary.animal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AnimalRulesTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 20);

    /** Offsets: Chicago is 6 hours behind UTC in November and 5 in July, Denver 7 (IANA time zone database). */
    @ParameterizedTest
    @CsvSource({
        "2026-11-14, America/Chicago, 2026-11-14",
        "2026-11-14T23:30:00-06:00, America/Chicago, 2026-11-14",
        "2026-11-15T05:30:00Z, America/Chicago, 2026-11-14",
        "2026-11-15T06:30:00Z, America/Chicago, 2026-11-15",
        "2026-11-15T06:30:00Z, America/Denver, 2026-11-14",
        "2026-09-01T04:30:00Z, America/Chicago, 2026-08-31",
        "2026-09-01T05:30:00Z, America/Chicago, 2026-09-01",
        "2026-11-14T20:00:00+09:00, America/Chicago, 2026-11-14"
    })
    void aTimeCountsAsTheDayItWasAtTheStation(String typed, String zone, LocalDate expected) {
        assertEquals(expected, AnimalRules.diedOn(typed, ZoneId.of(zone)));
    }

    @Test
    void nothingTypedIsAnUnknownDay() {
        assertNull(AnimalRules.diedOn(" ", ZoneId.of("America/Chicago")));
        assertNull(AnimalRules.diedOn(null, ZoneId.of("America/Chicago")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"14.11.2026", "2026-11-31", "2026-11-14T07:30:00", "yesterday", "11/14/2026"})
    void refusesWhatIsNeitherADayNorATimeWithOffset(String typed) {
        InvalidInput refusal =
                assertThrows(InvalidInput.class, () -> AnimalRules.diedOn(typed, ZoneId.of("America/Chicago")));
        assertEquals("diedOn", refusal.errors().get(0).field());
        assertTrue(refusal.getMessage().contains(typed));
    }

    @Test
    void anUnknownDayNeedsAReasonAndWithOneIsAllowed() {
        assertEquals(List.of("diedOn"), fields(facts(null, null, JawStatus.READ, null, MortalitySource.UNKNOWN)));
        assertEquals(
                List.of(), fields(facts(null, "head left overnight", JawStatus.READ, null, MortalitySource.UNKNOWN)));
    }

    @Test
    void aDeathTomorrowIsRefusedAndOneTodayIsNot() {
        assertEquals(
                List.of("diedOn"),
                fields(facts(TODAY.plusDays(1), null, JawStatus.READ, null, MortalitySource.VEHICLE)));
        assertEquals(List.of(), fields(facts(TODAY, null, JawStatus.READ, null, MortalitySource.VEHICLE)));
    }

    @Test
    void aJawNotExaminedNeedsAReason() {
        assertEquals(
                List.of("jawReason"), fields(facts(TODAY, null, JawStatus.NOT_EXAMINED, " ", MortalitySource.VEHICLE)));
        assertEquals(
                List.of(),
                fields(facts(TODAY, null, JawStatus.NOT_EXAMINED, "head not brought", MortalitySource.VEHICLE)));
    }

    @Test
    void anotherCauseOfDeathNeedsWordsAndAllFaultsAreToldAtOnce() {
        assertEquals(
                List.of("diedOn", "jawReason", "mortalitySourceText"),
                fields(facts(null, null, JawStatus.NOT_EXAMINED, null, MortalitySource.OTHER)));
    }

    @Test
    void theSameIdentifierTwiceIsRefused() {
        Identifier tag = new Identifier("EAR_TAG", null, "A 12");
        AnimalFacts facts = facts(TODAY, null, JawStatus.READ, null, MortalitySource.VEHICLE);
        AnimalFacts twice = new AnimalFacts(
                facts.species(),
                facts.origin(),
                facts.sex(),
                facts.sexEvidence(),
                facts.diedOn(),
                facts.diedOnPrecision(),
                null,
                facts.unit(),
                facts.station(),
                facts.mortalitySource(),
                facts.collectionRoute(),
                facts.clinicalSigns(),
                facts.samplingBasis(),
                facts.jawStatus(),
                null,
                null,
                List.of(tag, tag),
                true,
                null);
        assertEquals(List.of("reason", "identifiers[1]"), fields(twice));
    }

    private static List<String> fields(AnimalFacts facts) {
        return AnimalRules.problems(facts, TODAY).stream()
                .map(FieldProblem::field)
                .toList();
    }

    private static AnimalFacts facts(
            LocalDate diedOn, String diedOnReason, JawStatus jaw, String jawReason, MortalitySource source) {
        return new AnimalFacts(
                "WHITE_TAILED_DEER",
                Origin.WILD,
                Sex.MALE,
                SexEvidence.UNKNOWN,
                diedOn,
                DiedOnPrecision.DAY,
                diedOnReason,
                "U",
                "S",
                source,
                CollectionRoute.STATION,
                ClinicalSigns.NONE_SEEN,
                SamplingBasis.MANDATORY,
                jaw,
                jawReason,
                null,
                null,
                false,
                null);
    }
}
