package org.dentary.intake.mixup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.time.Instant;
import org.junit.jupiter.api.Test;

class MixUpWordsTest {
    @Test
    void saysCodesAsPrintedAndKindsInWords() {
        assertEquals("Ear tag 4711", told(Sign.SAME_IDENTIFIER, "EAR_TAG 4711"));
        assertEquals(
                "RCC0-WZ13-J4 MJG6-ZD8J-NQ; RCC0-WZ13-FA MJG6-ZD8J-F4",
                told(Sign.SCANNED_TOGETHER, "RCC0WZ13J4 MJG6ZD8JNQ; RCC0WZ13FA MJG6ZD8JF4"));
        assertEquals("RCC0-WZ13-J4: the jar said J5", told(Sign.WRONG_ID, "RCC0WZ13J4: the jar said J5"));
        assertEquals(
                "a milk tooth beside molars that are well worn; a fawn's jaw with an adult's antlers, milk or fetus",
                told(Sign.JAW_OF_ANOTHER, "J11 J20"));
        assertNull(told(Sign.TWO_HALVES, ""));
    }

    private static String told(Sign sign, String detail) {
        return new MixUp("RCC0WZ13", null, sign, detail, "S1", "Station", null, Instant.EPOCH, "UTC", null).told();
    }
}
