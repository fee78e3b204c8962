package org.dentary.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * A seal over all events recorded since the one before it. {@code bytes} is the record, the rest derives from it.
 *
 * @param number from 1, without gaps
 * @param id the checkpoint's id; a client may choose it
 * @param madeAt when it was made
 * @param treeSize how many events it seals, at least 0
 * @param root Merkle root over their hashes, see {@link #leaf}
 * @param previous SHA-256 of the bytes of the checkpoint before it, or 64 zeros for the first
 * @param bytes the exact signed text, RFC 8785; it also names the public key
 * @param signature Ed25519 over the UTF-8 bytes of {@code bytes}, in base64
 */
public record Checkpoint(
        long number,
        UUID id,
        Instant madeAt,
        int treeSize,
        String root,
        String previous,
        String bytes,
        String signature) {

    /**
     * The checkpoint after another over some events.
     *
     * @param before the last checkpoint, or null for the first
     * @param hashes the hashes of the events it seals, in leaf order
     */
    public static Checkpoint following(
            Checkpoint before, UUID id, Instant madeAt, List<String> hashes, SigningKey key) {
        long number = before == null ? 1 : before.number() + 1;
        String previous = before == null ? Sha256.NOTHING_BEFORE : before.hash();
        String root = rootOver(hashes);
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("number", number);
        content.put("id", id);
        content.put("madeAt", madeAt);
        content.put("treeSize", hashes.size());
        content.put("root", root);
        content.put("previous", previous);
        content.put("key", key.publicKey());
        String bytes = CanonicalJson.of(content);
        return parse(bytes, key.sign(bytes));
    }

    /**
     * The checkpoint that a record's bytes describe; every component derives from them.
     *
     * @throws IllegalArgumentException if the bytes are no checkpoint's
     */
    public static Checkpoint parse(String bytes, String signature) {
        JsonNode content = CanonicalJson.parse(bytes);
        try {
            return new Checkpoint(
                    content.path("number").asLong(),
                    UUID.fromString(content.path("id").asText()),
                    Instant.parse(content.path("madeAt").asText()),
                    content.path("treeSize").asInt(),
                    content.path("root").asText(),
                    content.path("previous").asText(),
                    bytes,
                    signature);
        } catch (DateTimeParseException e) {
            throw new IllegalArgumentException("no checkpoint: " + e.getMessage(), e);
        }
    }

    /** SHA-256 over the bytes; what the next checkpoint names as previous. */
    public String hash() {
        return Sha256.hex(bytes);
    }

    /** The public key it names: base64 of the X.509 encoding. */
    public String key() {
        return content().path("key").asText();
    }

    /** The leaf hash of an event: the leaf's data are the 32 bytes of the event's hash. */
    public static byte[] leaf(String eventHash) {
        return MerkleTree.leafHash(Sha256.parse(eventHash));
    }

    /** The Merkle root over events' hashes in leaf order, 64 hexadecimal digits. */
    public static String rootOver(List<String> eventHashes) {
        return Sha256.hex(
                MerkleTree.root(eventHashes.stream().map(Checkpoint::leaf).toList()));
    }

    /**
     * Checks a checkpoint against the one before it, the events it seals and a key.
     *
     * @param before the checkpoint before it, or null for the first
     * @param hashes the hashes of its events in leaf order
     * @param trustedKey the public key that must have signed, base64 of its X.509 encoding
     * @return every difference, empty if all is as recorded
     */
    public List<Difference> verify(Checkpoint before, List<String> hashes, String trustedKey) {
        List<Difference> differences = new ArrayList<>();
        compare(differences, "number", before == null ? 1 : before.number() + 1, number);
        compare(differences, "previous", before == null ? Sha256.NOTHING_BEFORE : before.hash(), previous);
        compare(differences, "tree size", treeSize, hashes.size());
        compare(differences, "root", root, rootOver(hashes));
        compare(differences, "key", trustedKey, key());
        compare(differences, "signature", true, SigningKey.verifies(trustedKey, bytes, signature));
        Checkpoint recorded = parse(bytes, signature);
        compare(differences, "id beside its bytes", recorded.id, id);
        compare(differences, "number beside its bytes", recorded.number, number);
        compare(differences, "made at beside its bytes", recorded.madeAt, madeAt);
        compare(differences, "tree size beside its bytes", recorded.treeSize, treeSize);
        compare(differences, "root beside its bytes", recorded.root, root);
        compare(differences, "previous beside its bytes", recorded.previous, previous);
        return List.copyOf(differences);
    }

    private void compare(List<Difference> differences, String what, Object expected, Object found) {
        if (!String.valueOf(expected).equals(String.valueOf(found))) {
            differences.add(new Difference(
                    "checkpoint " + number,
                    (int) number,
                    String.valueOf(id),
                    what,
                    String.valueOf(expected),
                    String.valueOf(found)));
        }
    }

    private JsonNode content() {
        return CanonicalJson.parse(bytes);
    }
}
