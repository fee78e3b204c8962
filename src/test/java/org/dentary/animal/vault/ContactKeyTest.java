package org.dentary.animal.vault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ways to write one thing meet in one folded value; the decomposition is that of Unicode Standard Annex 15. */
class ContactKeyTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            NAME         | Inés de la Mora     | 'MORA,  ines DE la'
            NAME         | Søren Łukasz        | lukasz soren
            NAME         | O’Hara, Æva         | AEVA OHARA
            NAME         | Strauß              | STRAUSS
            PHONE        | +1 (555) 010-8811   | 555.010.8811
            PHONE        | ５５５ ０１０ ８８１１     | 5550108811
            REGISTRATION | wt 26-0417          | WT260417
            REGISTRATION | №7/a                | no 7A
            """)
    void meet(ContactKey key, String one, String other) {
        assertEquals(key.fold(one), key.fold(other));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            NAME         | Mora     | Mora Mora
            PHONE        | 555 0100 | 555 0101
            REGISTRATION | R-10     | R-1O
            """)
    void stayApart(ContactKey key, String one, String other) {
        assertNotEquals(key.fold(one), key.fold(other));
    }

    @ParameterizedTest
    @CsvSource({"NAME,' -- '", "PHONE,none", "REGISTRATION,'---'"})
    void nothingIsLeftOfWhatHoldsNothing(ContactKey key, String given) {
        assertEquals("", key.fold(given));
        assertNull(key.fold(null));
    }
}
