package org.dentary.submission;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.dentary.plan.LaboratoryProfile;
import org.dentary.plan.LaboratoryProfile.Closure;
import org.junit.jupiter.api.Test;

/** Weekdays, cut-off and closures of a laboratory as told at the bench. Common practice, no source. */
class ReceivingTest {
    private static final LocalDate WEDNESDAY = LocalDate.of(2026, 11, 25);

    @Test
    void aParcelThatWouldWaitIsWarnedAboutWithTheNextDayOfArrival() {
        Receiving receiving = Receiving.of(Optional.of(profile(WEDNESDAY.plusDays(1))), WEDNESDAY);
        assertTrue(
                receiving.warning().startsWith("It takes nothing on Thursday, November 26, 2026 (Harvest holiday)"),
                receiving.warning());
        assertTrue(receiving.warning().contains("waits until Monday, November 30, 2026"), receiving.warning());
        assertEquals(
                "Monday, Tuesday, Wednesday, Thursday, until 14:00 on its own clock",
                receiving.facts().get(0).words());
    }

    @Test
    void nothingIsSaidWhenItIsTakenTomorrow() {
        assertNull(Receiving.of(Optional.of(profile(WEDNESDAY.plusDays(9))), WEDNESDAY)
                .warning());
    }

    @Test
    void aWeekdayWithoutParcelsIsSaidLikeAHoliday() {
        String warning = Receiving.of(Optional.of(profile(WEDNESDAY)), WEDNESDAY.plusDays(1))
                .warning();
        assertTrue(warning.contains("Friday, November 27, 2026 (no parcels on this weekday)"), warning);
    }

    @Test
    void aPlanThatDoesNotSaySaysNothing() {
        Receiving nothing = Receiving.of(Optional.empty(), WEDNESDAY);
        assertEquals(List.of(), nothing.facts());
        assertNull(nothing.warning());
    }

    private static LaboratoryProfile profile(LocalDate closed) {
        return new LaboratoryProfile(
                "LAB",
                LocalDate.of(2025, 1, 1),
                null,
                List.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY, DayOfWeek.WEDNESDAY, DayOfWeek.THURSDAY),
                "14:00",
                null,
                null,
                null,
                null,
                List.of(new Closure(closed, "Harvest holiday")));
    }
}
