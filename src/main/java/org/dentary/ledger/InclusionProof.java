package org.dentary.ledger;

import java.util.List;

/**
 * That one event lies under one checkpoint, to be kept by someone who does not have the ledger.
 *
 * @param event the event
 * @param index its leaf's place in the checkpoint's tree, from 0
 * @param path sibling hashes, lowest first, 64 hexadecimal digits each
 * @param checkpoint the checkpoint
 */
public record InclusionProof(LedgerEvent event, int index, List<String> path, Checkpoint checkpoint) {

    /**
     * The proof for one of a checkpoint's events.
     *
     * @param hashes the hashes of all its events in leaf order
     * @throws IllegalArgumentException if the event's hash is not at that index
     */
    public static InclusionProof of(LedgerEvent event, int index, List<String> hashes, Checkpoint checkpoint) {
        if (index < 0 || index >= hashes.size() || !hashes.get(index).equals(event.hash())) {
            throw new IllegalArgumentException("event " + event.id() + " is not leaf " + index);
        }
        List<byte[]> leaves = hashes.stream().map(Checkpoint::leaf).toList();
        List<String> path =
                MerkleTree.path(index, leaves).stream().map(Sha256::hex).toList();
        return new InclusionProof(event, index, path, checkpoint);
    }

    /** The same from a tree that is there already; the caller knows that the event's hash is at that index. */
    static InclusionProof of(LedgerEvent event, int index, MerkleLevels tree, Checkpoint checkpoint) {
        return new InclusionProof(
                event, index, tree.path(index).stream().map(Sha256::hex).toList(), checkpoint);
    }

    /**
     * Whether the event's bytes, over the path, lead to the checkpoint's root, and the trusted key signed that.
     *
     * @param trustedKey base64 of the public key's X.509 encoding
     */
    public boolean holds(String trustedKey) {
        if (!LedgerEvent.parse(event.bytes()).equals(event)
                || !Checkpoint.parse(checkpoint.bytes(), checkpoint.signature()).equals(checkpoint)
                || !SigningKey.verifies(trustedKey, checkpoint.bytes(), checkpoint.signature())) {
            return false;
        }
        try {
            List<byte[]> siblings = path.stream().map(Sha256::parse).toList();
            byte[] root = MerkleTree.rootFrom(Checkpoint.leaf(event.hash()), index, checkpoint.treeSize(), siblings);
            return Sha256.hex(root).equals(checkpoint.root());
        } catch (IllegalArgumentException e) {
            return false;
        }
    }
}
