package org.dentary.story;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;

class WordsTest {
    @Test
    void saysCodesAsWords() {
        assertEquals("Hunter harvest", Words.asWords("HUNTER_HARVEST"));
        assertEquals("Re-attribution confirmed", Words.asWords("RE_ATTRIBUTION_CONFIRMED"));
    }

    @Test
    void saysDaysNumbersAndAgesAsPeopleDo() {
        assertEquals("Nov 5, 2026", Words.asDay(LocalDate.of(2026, 11, 5)));
        assertEquals("9,201", Words.asCount(9201));
        assertEquals("less than an hour", Words.asAge(new BigDecimal("0.0")));
        assertEquals("1.0 hours", Words.asAge(new BigDecimal("1.0")));
        assertEquals("72.0 hours", Words.asAge(new BigDecimal("72.0")));
        assertEquals("3 days", Words.asAge(new BigDecimal("72.1")));
    }
}
