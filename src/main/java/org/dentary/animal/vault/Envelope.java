package org.dentary.animal.vault;

import jakarta.enterprise.context.ApplicationScoped;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HexFormat;
import javax.crypto.Cipher;
import javax.crypto.Mac;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.dentary.platform.DataFolder;

/**
 * Encrypts what is private, each row under its own data key, which is wrapped by a key outside the database: without
 * either of the two the row is unreadable. AES-256-GCM (NIST SP 800-38D), 12-byte random nonces before the ciphertext,
 * the row's key as additional data, so that no row can be put in another's place.
 */
@ApplicationScoped
class Envelope {
    private static final String AES = "AES/GCM/NoPadding";
    private static final String HMAC = "HmacSHA256";
    private static final int NONCE = 12;
    private static final int TAG_BITS = 128;
    private static final int KEY = 32;

    private final byte[] wrapping;
    private final byte[] index;
    private final SecureRandom random = new SecureRandom();

    Envelope(DataFolder files) {
        this.wrapping = files.key("vault");
        this.index = files.key("vault-index");
    }

    /** A row's content under its wrapped data key. */
    record Sealed(byte[] wrappedKey, byte[] content) {}

    Sealed seal(String rowKey, byte[] plain) {
        byte[] key = new byte[KEY];
        random.nextBytes(key);
        Sealed sealed = new Sealed(encrypt(wrapping, rowKey, key), encrypt(key, rowKey, plain));
        Arrays.fill(key, (byte) 0);
        return sealed;
    }

    /** @throws IllegalStateException if the row was changed, moved, or its key is gone */
    byte[] open(String rowKey, Sealed sealed) {
        return decrypt(decrypt(wrapping, rowKey, sealed.wrappedKey()), rowKey, sealed.content());
    }

    /** A keyed digest by which a value can be looked up without being readable; null for null. */
    String index(String value) {
        if (value == null || value.isBlank()) {
            return null;
        }
        try {
            Mac mac = Mac.getInstance(HMAC);
            mac.init(new SecretKeySpec(index, HMAC));
            return HexFormat.of().formatHex(mac.doFinal(value.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(HMAC + " is required of every Java platform", e);
        }
    }

    private byte[] encrypt(byte[] key, String rowKey, byte[] plain) {
        byte[] nonce = new byte[NONCE];
        random.nextBytes(nonce);
        byte[] ciphertext = crypt(Cipher.ENCRYPT_MODE, key, nonce, rowKey, plain);
        return ByteBuffer.allocate(NONCE + ciphertext.length)
                .put(nonce)
                .put(ciphertext)
                .array();
    }

    private static byte[] decrypt(byte[] key, String rowKey, byte[] sealed) {
        return crypt(
                Cipher.DECRYPT_MODE,
                key,
                Arrays.copyOf(sealed, NONCE),
                rowKey,
                Arrays.copyOfRange(sealed, NONCE, sealed.length));
    }

    private static byte[] crypt(int mode, byte[] key, byte[] nonce, String rowKey, byte[] bytes) {
        try {
            Cipher cipher = Cipher.getInstance(AES);
            cipher.init(mode, new SecretKeySpec(key, "AES"), new GCMParameterSpec(TAG_BITS, nonce));
            cipher.updateAAD(rowKey.getBytes(StandardCharsets.UTF_8));
            return cipher.doFinal(bytes);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("what is private under " + rowKey + " cannot be opened", e);
        }
    }
}
