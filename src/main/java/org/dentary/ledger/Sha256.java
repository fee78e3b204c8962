package org.dentary.ledger;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.regex.Pattern;

/** SHA-256 (FIPS 180-4), as raw bytes and as 64 lower-case hexadecimal digits. */
public final class Sha256 {

    /** Stands where a first event or a first checkpoint has nothing before it. */
    public static final String NOTHING_BEFORE = "0".repeat(64);

    private static final Pattern HEX = Pattern.compile("[0-9a-f]{64}");

    private Sha256() {}

    /** The digest of the parts set one after another, 32 bytes. */
    public static byte[] of(byte[]... parts) {
        MessageDigest digest = newDigest();
        for (byte[] part : parts) {
            digest.update(part);
        }
        return digest.digest();
    }

    /** The digest of the text's UTF-8 bytes, 64 lower-case hexadecimal digits. */
    public static String hex(String text) {
        return hex(of(text.getBytes(StandardCharsets.UTF_8)));
    }

    /** Bytes as lower-case hexadecimal digits. */
    public static String hex(byte[] bytes) {
        return HexFormat.of().formatHex(bytes);
    }

    /**
     * The 32 bytes of a digest written as 64 lower-case hexadecimal digits.
     *
     * @throws IllegalArgumentException if the text is anything else
     */
    public static byte[] parse(String hex) {
        if (!isHex(hex)) {
            throw new IllegalArgumentException("not 64 lower-case hexadecimal digits: " + hex);
        }
        return HexFormat.of().parseHex(hex);
    }

    static boolean isHex(String text) {
        return text != null && HEX.matcher(text).matches();
    }

    private static MessageDigest newDigest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
