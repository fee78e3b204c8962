package org.dentary.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The tree by levels gives the roots and paths of the tree by halves, which the published vectors of RFC 9162 check. */
class MerkleLevelsTest {
    @Test
    void givesTheSameRootsAndPathsForEverySizeAndLeaf() {
        List<byte[]> leaves = new ArrayList<>();
        for (int size = 1; size <= 130; size++) {
            leaves.add(MerkleTree.leafHash(new byte[] {(byte) size}));
            MerkleLevels levels = new MerkleLevels(leaves);
            assertEquals(Sha256.hex(MerkleTree.root(leaves)), Sha256.hex(levels.root()), "size " + size);
            for (int index = 0; index < size; index++) {
                assertEquals(
                        hex(MerkleTree.path(index, leaves)), hex(levels.path(index)), "leaf " + index + " of " + size);
            }
        }
    }

    @Test
    void refusesNoLeavesAndAnIndexOutside() {
        assertThrows(IllegalArgumentException.class, () -> new MerkleLevels(List.of()));
        MerkleLevels one = new MerkleLevels(List.of(MerkleTree.leafHash(new byte[0])));
        assertEquals(List.of(), one.path(0));
        assertThrows(IllegalArgumentException.class, () -> one.path(1));
        assertThrows(IllegalArgumentException.class, () -> one.path(-1));
    }

    private static List<String> hex(List<byte[]> hashes) {
        return hashes.stream().map(Sha256::hex).toList();
    }
}
