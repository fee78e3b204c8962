package org.dentary.codes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class CheckSystemTest {

    private static final String DIGITS = "0123456789";
    private static final String ALPHANUMERIC = DIGITS + "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    /** Alphabets, moduli and radices from ISO/IEC 7064:2003, table of pure systems. */
    private static final Map<String, CheckSystem> SYSTEMS = Map.of(
            "MOD_11_2", new CheckSystem(DIGITS, "X", 11, 2),
            "MOD_37_2", new CheckSystem(ALPHANUMERIC, "*", 37, 2),
            "MOD_97_10", new CheckSystem(DIGITS, "", 97, 10),
            "MOD_1271_36", new CheckSystem(ALPHANUMERIC, "", 1271, 36),
            "LABELS", CheckSystem.LABELS);

    @ParameterizedTest(name = "{0}: {2} {3} {4} {5}")
    @CsvFileSource(resources = "check-systems.csv", numLinesToSkip = 1)
    void agreesWithPublishedValues(
            String desc, String source, String system, String payload, String check, String expectError) {
        CheckSystem checks = SYSTEMS.get(system);
        if (expectError == null) {
            assertEquals(check, checks.check(payload));
            assertTrue(checks.matches(payload + check));
            return;
        }
        assertFalse(checks.matches(payload + check));
        if (expectError.equals("FOREIGN")) {
            assertThrows(IllegalArgumentException.class, () -> checks.check(payload));
        }
    }

    @Test
    void catchesEverySubstitutionAndTranspositionOnAThousandCodes() {
        List<KitStem> kits = new Minting(new Random(29)).mint(1000);
        int tried = 0;
        for (int i = 0; i < kits.size(); i++) {
            String code =
                    kits.get(i).label(Part.values()[i % Part.values().length]).value();
            for (int at = 0; at < code.length(); at++) {
                for (char other : CheckSystem.LABELS.alphabet().toCharArray()) {
                    tried += caught(code, with(code, at, other));
                }
                tried += at + 1 < code.length() ? caught(code, swapped(code, at, at + 1)) : 0;
                tried += at + 2 < code.length() ? caught(code, swapped(code, at, at + 2)) : 0;
            }
        }
        assertTrue(tried > 290_000, "only " + tried + " faults tried");
    }

    @ParameterizedTest
    @CsvSource({"0123456789, 12, 2", "0123456789, 11, 10", "0123456789, 7, 2", "01234567899, 11, 2", "0123456789, 97, 2"
    })
    void refusesASystemThatWouldMissFaults(String alphabet, int modulus, int radix) {
        assertThrows(IllegalArgumentException.class, () -> new CheckSystem(alphabet, "", modulus, radix));
    }

    @Test
    void aStringShorterThanItsCheckMatchesNothing() {
        assertFalse(CheckSystem.LABELS.matches(""));
        assertFalse(SYSTEMS.get("MOD_97_10").matches("1"));
    }

    private static int caught(String code, String faulty) {
        if (faulty.equals(code)) {
            return 0;
        }
        assertFalse(CheckSystem.LABELS.matches(faulty), () -> faulty + " passes for " + code);
        return 1;
    }

    private static String with(String code, int at, char other) {
        return code.substring(0, at) + other + code.substring(at + 1);
    }

    private static String swapped(String code, int one, int two) {
        return with(with(code, one, code.charAt(two)), two, code.charAt(one));
    }
}
