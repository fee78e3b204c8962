package org.dentary.jaw.key;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Set;
import org.dentary.jaw.key.JawObservation.Dentine;
import org.dentary.jaw.key.JawObservation.Eruption;
import org.dentary.jaw.key.JawObservation.SixthTooth;
import org.dentary.jaw.key.JawObservation.ThirdTooth;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The calendar of ages, and the key beside the eruption schedule. */
class AgeingPlanTest {

    private static final AgeingPlan PLAN = AgeingPlan.NORTHERN;

    /**
     * Months from the first of June. Ages at an autumn harvest are quoted as half years, harvest falling half a year after birth
     * (Mississippi, excerpt); the figures are reckoned by hand to 0.1 month.
     */
    @ParameterizedTest
    @CsvSource({
        "2026-09-15, 3.5, 1.0, 4.2, 13.0, 16.2",
        "2026-10-15, 4.5, 2.0, 5.2, 14.0, 17.2",
        "2026-11-15, 5.5, 3.0, 6.2, 15.0, 18.2",
        "2026-12-15, 6.5, 4.0, 7.2, 16.0, 19.2",
        "2027-01-15, 7.5, 5.0, 8.2, 17.0, 20.2",
        "2027-02-15, 8.5, 6.0, 9.2, 18.0, 21.2"
    })
    void countsMonthsFromTheBirthPulse(
            LocalDate diedOn, double peak, double fawnFrom, double fawnTo, double yearlingFrom, double yearlingTo) {
        assertEquals(peak, AgeingPlan.months(LocalDate.of(2026, 6, 1), diedOn), 0.1);
        JawAnswer.Months fawn = PLAN.ageInMonths(AgeClass.FAWN, diedOn);
        JawAnswer.Months yearling = PLAN.ageInMonths(AgeClass.YEARLING, diedOn);
        assertEquals(fawnFrom, fawn.from(), 0.1);
        assertEquals(fawnTo, fawn.to(), 0.1);
        assertEquals(yearlingFrom, yearling.from(), 0.1);
        assertEquals(yearlingTo, yearling.to(), 0.1);
    }

    /**
     * A deer born on 1 June shows at each age what the schedule says, and the key gives it a band that holds its true age, with
     * no alarm about the date. Sources: fewer than six cheek teeth in a fawn and a sixth without dentine in a yearling, New York
     * DEC, Aging White-tailed Deer in New York; the yearling's three faces at 17, 18 and 19 months, state handout on ageing
     * jawbones and Indiana DNR; premolars replaced by 18 to 20 months, Quality Deer slides (all read as excerpts). Months of the
     * first and second molar are from memory, after Severinghaus 1949, J. Wildl. Manage. 13:195-216, not read in full.
     */
    @ParameterizedTest
    @CsvSource({
        "4, 4, 3, FULL, TRACE, NOT_ERUPTED, NOT_EXPOSED, FAWN",
        "6, 5, 3, FULL, TRACE, NOT_ERUPTED, NOT_EXPOSED, FAWN",
        "8, 5, 3, FULL, DEFINED, NOT_ERUPTED, NOT_EXPOSED, FAWN",
        "16, 6, 3, FULL, DEFINED, ERUPTING, NOT_EXPOSED, YEARLING_MILK_THIRD",
        "17, 6, 3, FULL, DEFINED, ERUPTING, NOT_EXPOSED, YEARLING_MILK_THIRD",
        "18, 6, 2, ERUPTING, NOT_EXPOSED, ERUPTING, NOT_EXPOSED, YEARLING_NEW_THIRD",
        "19, 6, 2, FULL, NOT_EXPOSED, ERUPTING, NOT_EXPOSED, YEARLING_NEW_THIRD",
        "20, 6, 2, FULL, NOT_EXPOSED, FULL, NOT_EXPOSED, YEARLING_NEW_THIRD",
        "30, 6, 2, FULL, DEFINED, FULL, DEFINED, ADULT",
        "42, 6, 2, FULL, DEFINED, FULL, DEFINED, ADULT"
    })
    void agreesWithTheEruptionSchedule(
            int months,
            int count,
            int cusps,
            Eruption third,
            Dentine thirdDentine,
            Eruption sixth,
            Dentine sixthDentine,
            KeyClass expected) {
        LocalDate diedOn = LocalDate.of(2024, 6, 1).plusMonths(months);
        JawObservation jaw = new JawObservation(
                null,
                diedOn,
                null,
                count,
                new ThirdTooth(cusps, third, thirdDentine, null, null),
                new SixthTooth(sixth, sixthDentine),
                null,
                null,
                null,
                null,
                null,
                null);
        JawAnswer answer = JawKey.answer(jaw, JawContext.NONE, PLAN);
        assertEquals(expected, answer.keyClass());
        assertEquals(Certainty.CLEAR, answer.certainty());
        assertEquals(List.of(), answer.contradictions());
        double age = AgeingPlan.months(LocalDate.of(2024, 6, 1), diedOn);
        JawAnswer.Months band = answer.ageInMonths();
        assertTrue(band.from() <= age && (band.to() == null || age <= band.to()), () -> age + " outside " + band);
    }

    @Test
    void movesEveryDeerUpAClassOnTheFirstDayOfTheBiologicalYear() {
        assertEquals(2026, PLAN.biologicalYear(LocalDate.of(2027, 5, 31)));
        assertEquals(2027, PLAN.biologicalYear(LocalDate.of(2027, 6, 1)));
    }

    @Test
    void letsARegionSetItsOwnDates() {
        AgeingPlan southern = new AgeingPlan(
                "southern",
                MonthDay.of(6, 15),
                MonthDay.of(8, 1),
                MonthDay.of(10, 31),
                MonthDay.of(7, 1),
                MonthDay.of(4, 1),
                MonthDay.of(4, 15),
                MonthDay.of(12, 1),
                MonthDay.of(12, 15),
                MonthDay.of(3, 1),
                MonthDay.of(1, 15),
                MonthDay.of(5, 31),
                10,
                100,
                List.of(),
                false,
                Set.of(JawObservation.DEFAULT_SPECIES));
        JawObservation lateMilkThird = new JawObservation(
                null,
                LocalDate.of(2027, 2, 15),
                null,
                6,
                new ThirdTooth(3, null, null, null, null),
                new SixthTooth(null, Dentine.TRACE),
                null,
                null,
                null,
                null,
                null,
                null);
        JawAnswer there = JawKey.answer(lateMilkThird, JawContext.NONE, southern);
        assertEquals(List.of(), there.contradictions());
        assertEquals(new JawAnswer.Months(15.5, 20.0), there.ageInMonths());
        assertFalse(there.needsSecondReader(), "the plan lets a probable age stand");
        JawAnswer here = JawKey.answer(lateMilkThird, JawContext.NONE, PLAN);
        assertEquals("J16", here.contradictions().get(0).rule());
        assertTrue(here.needsSecondReader());
    }

    @Test
    void refusesABirthPulseThatRunsBackwards() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new AgeingPlan(
                        "backwards",
                        MonthDay.of(8, 15),
                        MonthDay.of(6, 1),
                        MonthDay.of(5, 10),
                        MonthDay.of(6, 1),
                        MonthDay.of(2, 1),
                        MonthDay.of(1, 31),
                        MonthDay.of(10, 1),
                        MonthDay.of(10, 15),
                        MonthDay.of(1, 1),
                        MonthDay.of(12, 15),
                        MonthDay.of(4, 30),
                        10,
                        100,
                        List.of(),
                        false,
                        Set.of()));
    }

    @Test
    void refusesAMassBandThatHoldsNothing() {
        assertThrows(IllegalArgumentException.class, () -> new AgeingPlan.MassBand(AgeClass.FAWN, null, 45, 10));
    }
}
