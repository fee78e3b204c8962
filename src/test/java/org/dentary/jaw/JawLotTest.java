package org.dentary.jaw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;

class JawLotTest {
    private static final String ALPHABET = "0123456789ACDFGHJKMNPQRTVWXYZ";

    /** MD5 of "abc" begins 9001509: RFC 1321, appendix A.5. As a share of 16^7 that is .5625207. */
    @Test
    void aKitIsDrawnByTheDigestOfItsCode() {
        assertFalse(JawLot.isDrawn("abc", new BigDecimal("0.5625")));
        assertTrue(JawLot.isDrawn("abc", new BigDecimal("0.5626")));
    }

    @Test
    void drawsTheShareAskedForAndAllOrNoneAtTheEnds() {
        Random random = new Random(20261125);
        int drawn = 0;
        for (int i = 0; i < 100_000; i++) {
            StringBuilder kit = new StringBuilder();
            for (int c = 0; c < 8; c++) {
                kit.append(ALPHABET.charAt(random.nextInt(ALPHABET.length())));
            }
            drawn += JawLot.isDrawn(kit.toString(), new BigDecimal("0.05")) ? 1 : 0;
            assertFalse(JawLot.isDrawn(kit.toString(), BigDecimal.ZERO));
            assertTrue(JawLot.isDrawn(kit.toString(), BigDecimal.ONE));
        }
        // Four standard errors of a binomial share: 4 sqrt(.05 * .95 / 100,000) = .0028.
        assertEquals(0.05, drawn / 100_000.0, 0.0028);
    }
}
