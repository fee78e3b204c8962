package org.dentary.prevalence.ageing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class AgeingWordsTest {
    @Test
    void aCountBelowNothingIsNeverToldAsMinusNothing() {
        assertEquals("slightly fewer than 0", AgeingWords.small(-0.0049));
        assertEquals("−0.01", AgeingWords.small(-0.0051));
        assertEquals("−0.03", AgeingWords.small(-0.03));
        assertEquals("−1.2", AgeingWords.small(-1.24));
    }

    @Test
    void aChangeThatRoundsToNothingHasNoSign() {
        assertEquals("0.0", AgeingWords.points(-0.04));
        assertEquals("−0.1", AgeingWords.points(-0.06));
        assertEquals("12.0", AgeingWords.points(12.04));
    }
}
