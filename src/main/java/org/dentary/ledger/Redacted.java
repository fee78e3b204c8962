package org.dentary.ledger;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.Arrays;

/**
 * Something that must be erasable (free text, a signature, a photo, an exact point): the ledger hashes only
 * SHA-256(salt ‖ content); salt and content lie beside it and can be destroyed without touching a chain.
 *
 * @param salt 32 random bytes, so that a short content cannot be guessed from its digest
 * @param content the bytes; text as UTF-8
 * @param digest 64 lower-case hexadecimal digits
 */
public record Redacted(byte[] salt, byte[] content, String digest) {

    /** Length of every salt in bytes; fixed, so that salt and content cannot be cut apart at another place. */
    public static final int SALT_BYTES = 32;

    private static final SecureRandom RANDOM = new SecureRandom();

    /** @throws IllegalArgumentException if the salt has another length or the digest is not that of salt and content */
    public Redacted {
        if (salt.length != SALT_BYTES) {
            throw new IllegalArgumentException("a salt has " + SALT_BYTES + " bytes, not " + salt.length);
        }
        salt = salt.clone();
        content = content.clone();
        String expected = Sha256.hex(Sha256.of(salt, content));
        if (!expected.equals(digest)) {
            throw new IllegalArgumentException(
                    "content differs from its digest: expected " + expected + ", found " + digest);
        }
    }

    /** A text under a fresh salt. */
    public static Redacted of(String text) {
        return of(text.getBytes(StandardCharsets.UTF_8));
    }

    /** Bytes under a fresh salt. */
    public static Redacted of(byte[] content) {
        byte[] salt = new byte[SALT_BYTES];
        RANDOM.nextBytes(salt);
        return new Redacted(salt, content, Sha256.hex(Sha256.of(salt, content)));
    }

    /** The content read as UTF-8. */
    public String text() {
        return new String(content, StandardCharsets.UTF_8);
    }

    @Override
    public byte[] salt() {
        return salt.clone();
    }

    @Override
    public byte[] content() {
        return content.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Redacted that && Arrays.equals(salt, that.salt) && Arrays.equals(content, that.content);
    }

    @Override
    public int hashCode() {
        return digest.hashCode();
    }

    /** The digest alone: what is redacted must not reach a log. */
    @Override
    public String toString() {
        return "Redacted[" + digest + "]";
    }
}
