package org.dentary.portal.day;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.dentary.portal.day.DayQueries.Jar;
import org.junit.jupiter.api.Test;

/** Expected against scanned, both ways and by name (common practice, no source). */
class JarCountTest {
    private static final List<Jar> JARS = List.of(
            new Jar("A1", "A", "PERSON"),
            new Jar("A2", "A", "PERSON"),
            new Jar("B1", "B", null),
            new Jar("C1", "C", "STORE"),
            new Jar("D1", "D", "PARTY"));

    @Test
    void whatIsHereAndNotScannedIsMissingAndWhatIsAwayIsNot() {
        JarCount count = JarCount.of(JARS, List.of("A1"));
        assertEquals(List.of("A2", "B1"), count.missing());
        assertEquals(List.of(), count.elsewhere());
        assertFalse(count.agrees());
    }

    @Test
    void whatIsScannedTwiceCountsOnceAndAllOfThemAgree() {
        JarCount count = JarCount.of(JARS, List.of("B1", "A2", "A1", "A1"));
        assertEquals(3, count.scanned());
        assertTrue(count.agrees());
    }

    @Test
    void whatShouldBeElsewhereOrIsOfAnotherDayIsNamed() {
        JarCount count = JarCount.of(JARS, List.of("A1", "A2", "B1", "D1", "Z9"));
        assertEquals(List.of("D1"), count.elsewhere());
        assertEquals(List.of("Z9"), count.unknown());
        assertEquals(List.of(), count.missing());
        assertFalse(count.agrees());
    }

    @Test
    void aDayWithoutJarsKnowsNone() {
        assertEquals(List.of("A1"), JarCount.of(List.of(), List.of("A1")).unknown());
    }
}
