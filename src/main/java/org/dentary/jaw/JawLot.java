package org.dentary.jaw;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Which jaws the lot sends to a second reader. A kit's code is random and means nothing, so the lot is a number made from it:
 * the same on every instance, and nobody's choice.
 */
final class JawLot {
    private static final int DIGITS = 7;
    private static final double NUMBERS = 1L << (4 * DIGITS);

    private JawLot() {}

    /**
     * Whether a jaw is drawn.
     *
     * @param share of jaws to draw, in [0, 1]
     */
    static boolean isDrawn(String kit, BigDecimal share) {
        try {
            byte[] digest = MessageDigest.getInstance("MD5").digest(kit.getBytes(StandardCharsets.US_ASCII));
            int number = Integer.parseInt(HexFormat.of().formatHex(digest).substring(0, DIGITS), 16);
            return number < NUMBERS * share.doubleValue();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("MD5 is required of every Java platform", e);
        }
    }
}
