package org.dentary.ledger;

import java.util.ArrayList;
import java.util.List;

/**
 * A tree's hashes level by level, leaves first, so that any number of paths costs one pass over the leaves. A node
 * without a partner goes up as it is; that is the tree of RFC 9162, 2.1.1, whose left parts are full.
 */
final class MerkleLevels {
    private final List<List<byte[]>> levels = new ArrayList<>();

    /** @param leaves leaf hashes in order, at least one */
    MerkleLevels(List<byte[]> leaves) {
        if (leaves.isEmpty()) {
            throw new IllegalArgumentException("a tree without leaves has no paths");
        }
        List<byte[]> level = List.copyOf(leaves);
        levels.add(level);
        while (level.size() > 1) {
            List<byte[]> above = new ArrayList<>((level.size() + 1) / 2);
            for (int i = 0; i < level.size(); i += 2) {
                above.add(i + 1 < level.size() ? MerkleTree.nodeHash(level.get(i), level.get(i + 1)) : level.get(i));
            }
            levels.add(above);
            level = above;
        }
    }

    /** How many leaves it has. */
    int size() {
        return levels.get(0).size();
    }

    byte[] root() {
        return levels.get(levels.size() - 1).get(0);
    }

    /**
     * The sibling hashes from a leaf up, lowest first (RFC 9162, 2.1.3.1).
     *
     * @throws IllegalArgumentException if the index lies outside [0, leaves)
     */
    List<byte[]> path(int index) {
        if (index < 0 || index >= size()) {
            throw new IllegalArgumentException("index " + index + " outside a tree of " + size() + " leaves");
        }
        List<byte[]> path = new ArrayList<>();
        int node = index;
        for (List<byte[]> level : levels.subList(0, levels.size() - 1)) {
            int sibling = node ^ 1;
            if (sibling < level.size()) {
                path.add(level.get(sibling));
            }
            node >>= 1;
        }
        return path;
    }
}
