package org.dentary.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Base64;
import java.util.HexFormat;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

class SigningKeyTest {

    /** The X.509 frame of a raw Ed25519 public key (RFC 8410, 4). */
    private static final String X509 = "302a300506032b6570032100";

    @TempDir
    Path folder;

    @TestFactory
    Stream<DynamicTest> takesThePublishedSignaturesAndNoOther() {
        return Vectors.tests(Vectors.read("rfc8032.json"), vector -> {
            String key = base64(X509 + vector.path("key").asText());
            String message =
                    new String(HexFormat.of().parseHex(vector.path("message").asText()), StandardCharsets.UTF_8);
            boolean expected = vector.path("expectError").isNull();
            assertEquals(
                    expected,
                    SigningKey.verifies(
                            key, message, base64(vector.path("signature").asText())));
        });
    }

    @Test
    void makesAKeyOnceThatOnlyItsOwnerReads() throws IOException {
        Path file = folder.resolve("keys/checkpoint.pem");
        SigningKey made = SigningKey.loadOrCreate(file);
        SigningKey loaded = SigningKey.loadOrCreate(file);
        assertEquals(made.publicKey(), loaded.publicKey());
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
        assertTrue(SigningKey.verifies(made.publicKey(), "text", loaded.sign("text")));
        assertFalse(SigningKey.verifies(made.publicKey(), "texT", loaded.sign("text")));
        try (Stream<Path> files = Files.list(file.getParent())) {
            assertEquals(1, files.count(), "nothing half-made is left behind");
        }
    }

    @Test
    void refusesAKeyThatOthersCanRead() throws IOException {
        Path file = folder.resolve("checkpoint.pem");
        SigningKey.loadOrCreate(file);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
        var refusal = assertThrows(IllegalStateException.class, () -> SigningKey.loadOrCreate(file));
        assertTrue(refusal.getMessage().contains("chmod 600"), refusal.getMessage());
    }

    @Test
    void refusesAFileThatIsNoKeyAndLeavesItAlone() throws IOException {
        Path file = folder.resolve("checkpoint.pem");
        Files.writeString(file, "nothing of the kind");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        assertThrows(IllegalStateException.class, () -> SigningKey.loadOrCreate(file));
        assertEquals("nothing of the kind", Files.readString(file));
    }

    @Test
    void refusesTwoHalvesOfDifferentKeys() throws IOException {
        Path one = folder.resolve("one.pem");
        Path two = folder.resolve("two.pem");
        SigningKey first = SigningKey.loadOrCreate(one);
        SigningKey second = SigningKey.loadOrCreate(two);
        assertNotEquals(first.fingerprint(), second.fingerprint());
        Files.writeString(one, Files.readString(one).replace(first.publicKeyPem(), second.publicKeyPem()));
        var refusal = assertThrows(IllegalStateException.class, () -> SigningKey.loadOrCreate(one));
        assertTrue(refusal.getMessage().contains("different keys"), refusal.getMessage());
    }

    private static String base64(String hex) {
        return Base64.getEncoder().encodeToString(HexFormat.of().parseHex(hex));
    }
}
