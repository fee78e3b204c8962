package org.dentary.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.Base64;
import java.util.EnumSet;
import java.util.Set;

/**
 * The Ed25519 key (RFC 8032) that signs checkpoints. It lies in a file that only its owner can read, never in the
 * database: who can rewrite the database still cannot sign.
 *
 * <p>The file holds two PEM blocks, {@code PRIVATE KEY} (PKCS #8) and {@code PUBLIC KEY} (X.509).
 */
public final class SigningKey {

    private static final Set<PosixFilePermission> OWNER_ONLY =
            EnumSet.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE);

    private final PrivateKey privateKey;
    private final PublicKey publicKey;

    SigningKey(PrivateKey privateKey, PublicKey publicKey) {
        this.privateKey = privateKey;
        this.publicKey = publicKey;
    }

    /**
     * The key in a file; a file that is missing is made with a fresh key and mode 600.
     *
     * @throws IllegalStateException if the file can be read by others than its owner, holds no Ed25519 key, or its two
     *     halves do not belong together; the message says what to do
     */
    public static SigningKey loadOrCreate(Path file) {
        try {
            if (!Files.exists(file)) {
                create(file);
            }
            return load(file);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read or make the signing key " + file, e);
        }
    }

    /** The signature over the text's UTF-8 bytes, in base64. */
    public String sign(String text) {
        try {
            Signature signature = Signature.getInstance("Ed25519");
            signature.initSign(privateKey);
            signature.update(text.getBytes(StandardCharsets.UTF_8));
            return Base64.getEncoder().encodeToString(signature.sign());
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("cannot sign", e);
        }
    }

    /**
     * Whether a signature over a text is that of a key.
     *
     * @param key the public key as {@link #publicKey()} gives it
     * @param signature in base64
     * @return false also where key or signature is no such thing
     */
    public static boolean verifies(String key, String text, String signature) {
        try {
            Signature check = Signature.getInstance("Ed25519");
            check.initVerify(KeyFactory.getInstance("Ed25519")
                    .generatePublic(new X509EncodedKeySpec(Base64.getDecoder().decode(key))));
            check.update(text.getBytes(StandardCharsets.UTF_8));
            return check.verify(Base64.getDecoder().decode(signature));
        } catch (GeneralSecurityException | IllegalArgumentException e) {
            return false;
        }
    }

    /** The public key: base64 of its X.509 encoding, one line. */
    public String publicKey() {
        return Base64.getEncoder().encodeToString(publicKey.getEncoded());
    }

    /** The public key as a PEM block, as common tools read it. */
    public String publicKeyPem() {
        return pem("PUBLIC KEY", publicKey.getEncoded());
    }

    /** SHA-256 of the public key's X.509 encoding, short enough to print and compare by eye. */
    public String fingerprint() {
        return Sha256.hex(Sha256.of(publicKey.getEncoded()));
    }

    private static void create(Path file) throws IOException {
        KeyPair pair;
        try {
            pair = KeyPairGenerator.getInstance("Ed25519").generateKeyPair();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("this Java has no Ed25519", e);
        }
        String text = pem("PRIVATE KEY", pair.getPrivate().getEncoded())
                + pem("PUBLIC KEY", pair.getPublic().getEncoded());
        Path folder = file.toAbsolutePath().getParent();
        Files.createDirectories(folder);
        Path fresh = Files.createTempFile(
                folder, file.getFileName().toString(), ".new", PosixFilePermissions.asFileAttribute(OWNER_ONLY));
        try {
            Files.writeString(fresh, text, StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.SYNC);
            Files.createLink(file, fresh);
        } catch (FileAlreadyExistsException e) {
            // Another start was quicker; its key is as good and is loaded next.
            return;
        } finally {
            Files.delete(fresh);
        }
    }

    private static SigningKey load(Path file) throws IOException {
        Set<PosixFilePermission> permissions = Files.getPosixFilePermissions(file);
        if (!OWNER_ONLY.containsAll(permissions)) {
            throw new IllegalStateException("signing key " + file + " can be used by others ("
                    + PosixFilePermissions.toString(permissions) + "); run chmod 600 on it, or make a new key");
        }
        String text = Files.readString(file);
        SigningKey key;
        try {
            KeyFactory factory = KeyFactory.getInstance("Ed25519");
            key = new SigningKey(
                    factory.generatePrivate(new PKCS8EncodedKeySpec(unpem("PRIVATE KEY", text))),
                    factory.generatePublic(new X509EncodedKeySpec(unpem("PUBLIC KEY", text))));
        } catch (GeneralSecurityException | IllegalArgumentException e) {
            throw new IllegalStateException("signing key " + file + " holds no Ed25519 key pair; restore it", e);
        }
        if (!verifies(key.publicKey(), "pair", key.sign("pair"))) {
            throw new IllegalStateException("signing key " + file + " holds two halves of different keys; restore it");
        }
        return key;
    }

    private static String pem(String type, byte[] encoded) {
        String body = Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(encoded);
        return "-----BEGIN " + type + "-----\n" + body + "\n-----END " + type + "-----\n";
    }

    private static byte[] unpem(String type, String text) {
        String begin = "-----BEGIN " + type + "-----";
        int from = text.indexOf(begin);
        int to = text.indexOf("-----END " + type + "-----");
        if (from < 0 || to < from) {
            throw new IllegalArgumentException("no " + type + " block");
        }
        return Base64.getMimeDecoder().decode(text.substring(from + begin.length(), to));
    }
}
