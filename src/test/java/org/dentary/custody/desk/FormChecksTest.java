package org.dentary.custody.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.Instant;
import org.dentary.custody.chain.CustodyRules;
import org.dentary.platform.problem.InvalidInput;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

class FormChecksTest {
    @Test
    void tellsMomentsOnTheClockOfTheDesk() {
        Instant collected = Instant.parse("2026-11-25T22:31:10.210169Z");
        InvalidInput refusal = Assertions.assertThrows(
                InvalidInput.class,
                () -> CustodyRules.requireAfterCollection(
                        "RCC0WZ13K2", collected.minus(Duration.ofMinutes(1)), collected));
        // Chicago is six hours behind UTC in November (tz database).
        assertEquals(
                "the time given, Nov 25, 2026, 16:30:10 CST is before RCC0WZ13K2 was collected (Nov 25, 2026, 16:31:10"
                        + " CST); nothing can happen to a specimen before it is one",
                FormChecks.shown(refusal, "America/Chicago").all().get(0).message());
    }
}
