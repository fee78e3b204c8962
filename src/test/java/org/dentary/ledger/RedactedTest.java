package org.dentary.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;

class RedactedTest {

    @Test
    void hashesSaltThenContent() {
        byte[] salt = HexFormat.of().parseHex("00".repeat(31) + "01");
        // python3: hashlib.sha256(bytes(31) + b'\x01' + b'torn bag').hexdigest()
        String digest = "0f81c2550ac1629dcd07e73c2ba6bd76a61aff68257de897a21c98185d5be42a";
        byte[] content = "torn bag".getBytes(StandardCharsets.UTF_8);
        assertEquals("torn bag", new Redacted(salt, content, digest).text());
    }

    @Test
    void neverGivesEqualContentsEqualDigests() {
        assertNotEquals(Redacted.of("yes").digest(), Redacted.of("yes").digest());
    }

    @Test
    void refusesContentThatIsNotWhatWasHashed() {
        Redacted note = Redacted.of("torn bag");
        byte[] other = "torn bog".getBytes(StandardCharsets.UTF_8);
        assertThrows(IllegalArgumentException.class, () -> new Redacted(note.salt(), other, note.digest()));
        assertThrows(IllegalArgumentException.class, () -> new Redacted(new byte[31], note.content(), note.digest()));
    }

    @Test
    void neverPrintsItsContent() {
        assertFalse(Redacted.of("torn bag").toString().contains("torn"));
    }
}
