package org.dentary.jaw.practice;

import static org.dentary.jaw.AgeingMethod.KNOWN_AGE_MARK;
import static org.dentary.jaw.AgeingMethod.REPORTED_BY_HUNTER;
import static org.dentary.jaw.AgeingMethod.TOOTH_REPLACEMENT;
import static org.dentary.jaw.key.AgeClass.ADULT;
import static org.dentary.jaw.key.AgeClass.FAWN;
import static org.dentary.jaw.key.AgeClass.UNKNOWN;
import static org.dentary.jaw.key.AgeClass.YEARLING;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.dentary.jaw.AgeingMethod;
import org.dentary.jaw.JawReadingView;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.Certainty;
import org.junit.jupiter.api.Test;

class PanelRulesTest {
    @Test
    void anAgeKnownFromAMarkStandsWhateverReadersSay() {
        assertEquals("KNOWN_AGE ADULT", standard(read("A", YEARLING, false), read("M", ADULT, KNOWN_AGE_MARK)));
        assertEquals("none", standard(read("M", ADULT, KNOWN_AGE_MARK), read("N", FAWN, KNOWN_AGE_MARK)));
        assertEquals("none", standard(read("M", UNKNOWN, KNOWN_AGE_MARK)));
    }

    @Test
    void readersAgreeWhenTwoSayTheSameOneOfThemBlindAndNobodyElse() {
        assertEquals("AGREED FAWN", standard(read("A", FAWN, false), read("B", FAWN, true)));
        assertEquals("none", standard(read("A", FAWN, false)));
        assertEquals("none", standard(read("A", FAWN, false), read("B", FAWN, false)));
        assertEquals("none", standard(read("A", FAWN, false), read("B", YEARLING, true)));
        assertEquals("none", standard(read("A", FAWN, false), read("B", UNKNOWN, true)));
        assertEquals("none", standard(read("A", FAWN, false), read("B", FAWN, REPORTED_BY_HUNTER)));
        assertEquals("none", standard());
    }

    private static String standard(JawReadingView... readings) {
        return PanelRules.standard(List.of(readings))
                .map(found -> found.kind() + " " + found.ageClass())
                .orElse("none");
    }

    private static JawReadingView read(String who, AgeClass ageClass, boolean blind) {
        return reading(who, ageClass, TOOTH_REPLACEMENT, blind);
    }

    private static JawReadingView read(String who, AgeClass ageClass, AgeingMethod method) {
        return reading(who, ageClass, method, method != KNOWN_AGE_MARK);
    }

    private static JawReadingView reading(String who, AgeClass ageClass, AgeingMethod method, boolean blind) {
        Certainty certainty = ageClass == UNKNOWN ? Certainty.UNRESOLVED : Certainty.CLEAR;
        return new JawReadingView(
                UUID.randomUUID(),
                "A0000000",
                Instant.EPOCH,
                who,
                method,
                null,
                null,
                ageClass,
                certainty,
                false,
                List.of(),
                false,
                true,
                false,
                blind,
                null,
                null,
                null,
                null,
                "t",
                who,
                Instant.EPOCH);
    }
}
