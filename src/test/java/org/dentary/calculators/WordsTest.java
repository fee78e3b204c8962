package org.dentary.calculators;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class WordsTest {

    /** Common practice: no decimal under 30 animals, one under 1,000. */
    @Test
    void printsNoMoreDigitsThanTheSampleCarries() {
        assertEquals("33 %", Words.percent(1 / 3.0, 29));
        assertEquals("33.3 %", Words.percent(1 / 3.0, 30));
        assertEquals("33.3 %", Words.percent(1 / 3.0, 999));
        assertEquals("33.33 %", Words.percent(1 / 3.0, 1000));
        assertEquals("undefined", Words.percent(null, 100));
    }

    @Test
    void whatIsNotQuiteCertainIsNotPrintedAsCertain() {
        assertEquals("above 99.9 %", Words.chance(0.99999));
        assertEquals("99.9 %", Words.chance(0.999));
        assertEquals("100.0 %", Words.chance(1.0));
        assertEquals("below 0.1 %", Words.chance(0.00001));
        assertEquals("0.0 %", Words.chance(0.0));
    }

    @Test
    void levelsAreAsGivenAndNumbersShort() {
        assertEquals("95 %", Words.level(0.95));
        assertEquals("99.9 %", Words.level(0.999));
        assertEquals("unbounded", Words.number(Double.POSITIVE_INFINITY));
        assertEquals("1.5", Words.number(1.5));
        assertEquals("0", Words.number(-0.0001));
        assertEquals("325.6", Words.tenths(325.6231));
        assertEquals("below 0.001", Words.p(0.0002));
        assertEquals("0.050", Words.p(0.05));
        assertEquals("1,200 animals", Words.animals(1200));
        assertEquals("1 animal", Words.animals(1));
        assertEquals("(no interval)", Words.between(null, null, 5));
    }
}
