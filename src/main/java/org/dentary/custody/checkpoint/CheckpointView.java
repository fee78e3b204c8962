package org.dentary.custody.checkpoint;

import java.time.Instant;
import java.util.UUID;
import org.dentary.ledger.Checkpoint;

/**
 * A checkpoint of the ledger as sent out.
 *
 * @param text the exact signed text, from which all else derives
 * @param hash SHA-256 of the text; note it with the number where this service cannot reach it
 * @param key the public key that signed, base64 of its X.509 encoding
 * @param signature Ed25519, base64
 */
public record CheckpointView(
        long number,
        UUID id,
        Instant madeAt,
        int treeSize,
        String root,
        String previous,
        String text,
        String hash,
        String key,
        String signature) {

    static CheckpointView of(Checkpoint checkpoint) {
        return new CheckpointView(
                checkpoint.number(),
                checkpoint.id(),
                checkpoint.madeAt(),
                checkpoint.treeSize(),
                checkpoint.root(),
                checkpoint.previous(),
                checkpoint.bytes(),
                checkpoint.hash(),
                checkpoint.key(),
                checkpoint.signature());
    }
}
