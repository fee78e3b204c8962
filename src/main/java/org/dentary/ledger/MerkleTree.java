package org.dentary.ledger;

import java.util.ArrayList;
import java.util.List;

/**
 * Merkle tree hashing with SHA-256 as RFC 9162, clause 2.1 (unchanged from RFC 6962): a leaf is hashed behind a zero
 * byte, a node behind a one byte, and n leaves are split at the largest power of two smaller than n.
 *
 * <p>Hashes are 32 bytes. Lists of leaves hold leaf hashes (see {@link #leafHash}), in order; an index counts from 0.
 */
public final class MerkleTree {

    private static final byte[] LEAF = {0};
    private static final byte[] NODE = {1};

    private MerkleTree() {}

    /** The hash of a leaf's data. */
    public static byte[] leafHash(byte[] data) {
        return Sha256.of(LEAF, data);
    }

    /** The hash of two sub-trees. */
    public static byte[] nodeHash(byte[] left, byte[] right) {
        return Sha256.of(NODE, left, right);
    }

    /** The tree's root (RFC 9162, 2.1.1); that of no leaves is the SHA-256 of nothing. */
    public static byte[] root(List<byte[]> leaves) {
        return leaves.isEmpty() ? Sha256.of() : subRoot(leaves);
    }

    /**
     * The path from a leaf up to the root (RFC 9162, 2.1.3.1): the siblings, lowest first; empty for a tree of one.
     *
     * @throws IllegalArgumentException if the index lies outside [0, leaves)
     */
    public static List<byte[]> path(int index, List<byte[]> leaves) {
        if (index < 0 || index >= leaves.size()) {
            throw new IllegalArgumentException("index " + index + " outside a tree of " + leaves.size() + " leaves");
        }
        List<byte[]> path = new ArrayList<>();
        collect(index, leaves, path);
        return List.copyOf(path);
    }

    /**
     * The root that a leaf and its path lead to (RFC 9162, 2.1.3.2); compare it with the signed one.
     *
     * @param size number of leaves of the tree
     * @throws IllegalArgumentException if the index lies outside [0, size) or the path has a length no such tree gives
     */
    public static byte[] rootFrom(byte[] leafHash, long index, long size, List<byte[]> path) {
        if (index < 0 || index >= size) {
            throw new IllegalArgumentException("index " + index + " outside a tree of " + size + " leaves");
        }
        long node = index;
        long last = size - 1;
        byte[] hash = leafHash;
        for (byte[] sibling : path) {
            if (last == 0) {
                throw new IllegalArgumentException("path of " + path.size() + " hashes is too long");
            }
            if ((node & 1) == 1 || node == last) {
                hash = nodeHash(sibling, hash);
                while ((node & 1) == 0 && node != 0) {
                    node >>= 1;
                    last >>= 1;
                }
            } else {
                hash = nodeHash(hash, sibling);
            }
            node >>= 1;
            last >>= 1;
        }
        if (last != 0) {
            throw new IllegalArgumentException("path of " + path.size() + " hashes is too short");
        }
        return hash;
    }

    private static byte[] subRoot(List<byte[]> leaves) {
        if (leaves.size() == 1) {
            return leaves.get(0);
        }
        int split = split(leaves.size());
        return nodeHash(subRoot(leaves.subList(0, split)), subRoot(leaves.subList(split, leaves.size())));
    }

    private static void collect(int index, List<byte[]> leaves, List<byte[]> path) {
        if (leaves.size() == 1) {
            return;
        }
        int split = split(leaves.size());
        List<byte[]> left = leaves.subList(0, split);
        List<byte[]> right = leaves.subList(split, leaves.size());
        if (index < split) {
            collect(index, left, path);
            path.add(subRoot(right));
        } else {
            collect(index - split, right, path);
            path.add(subRoot(left));
        }
    }

    private static int split(int size) {
        return Integer.highestOneBit(size - 1);
    }
}
