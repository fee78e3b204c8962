package org.dentary.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Printed shares; the limits come from the tables named, the digits are common practice, no source. */
class PercentTest {
    /** Newcombe 1998, Stat Med 17:857-872, table I (from memory; R's binom.test and prop.test agree): limits of 1/29 and 0/20. */
    @ParameterizedTest
    @CsvSource({
        "0.0061, 29, 1 %",
        "0.0009, 29, under 1 %",
        "0.1718, 29, 17 %",
        "0.1611, 20, 16 %",
        "0.0624, 148, 6.2 %",
        "0, 20, 0 %",
        "1, 20, 100 %",
        "0.9991, 29, over 99 %"
    })
    void limitsAreNeitherNoneNorAllWhereTheyAreNot(double share, int animals, String printed) {
        assertEquals(printed, Percent.of(share, animals));
    }

    @Test
    void digitsGrowWithTheAnimals() {
        assertEquals("33 %", Percent.of(1 / 3.0, 29));
        assertEquals("33.3 %", Percent.of(1 / 3.0, 30));
        assertEquals("33.3 %", Percent.of(1 / 3.0, 999));
        assertEquals("33.33 %", Percent.of(1 / 3.0, 1000));
    }

    /** R: binom.test(0, n)$conf.int[2] is 0.02498 % at 14,764 and 0.0003689 % at 1,000,000. */
    @Test
    void anUpperLimitOfManyIsNeverPrintedAsNothing() {
        assertEquals("0.02 %", Percent.of(0.0002498, 14_764));
        assertEquals("under 0.01 %", Percent.of(0.000003689, 1_000_000));
        assertEquals("under 0.1 %", Percent.of(0.0004, 500));
        assertEquals("over 99.9 %", Percent.of(0.9996, 500));
        assertEquals("over 99.99 %", Percent.of(0.99999, 5000));
        assertEquals("0.1 %", Percent.of(0.0005, 500));
    }

    /** An uncut estimate of a true prevalence may lie below 0. */
    @Test
    void aShareBelowNoneKeepsItsSign() {
        assertEquals("-3.7 %", Percent.of(-0.0373, 151));
        assertEquals("-0.02 %", Percent.of(-0.0002, 151));
        assertEquals("0 %", Percent.of(-0.0, 20));
        assertEquals("109 %", Percent.of(1.087, 20));
    }
}
