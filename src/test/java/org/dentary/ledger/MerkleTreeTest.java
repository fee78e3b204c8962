package org.dentary.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class MerkleTreeTest {

    private final JsonNode vectors = Vectors.read("rfc6962.json");
    private final List<byte[]> leaves = Vectors.each(vectors.path("leaves"))
            .map(leaf -> MerkleTree.leafHash(HexFormat.of().parseHex(leaf.asText())))
            .toList();

    @TestFactory
    Stream<DynamicTest> givesTheReferenceRoots() {
        return Vectors.tests(
                vectors.path("roots"),
                vector -> assertEquals(
                        vector.path("root").asText(),
                        Sha256.hex(MerkleTree.root(
                                leaves.subList(0, vector.path("size").asInt())))));
    }

    @TestFactory
    Stream<DynamicTest> givesTheReferencePaths() {
        return Vectors.tests(vectors.path("paths"), vector -> {
            int size = vector.path("size").asInt();
            List<String> expected =
                    Vectors.each(vector.path("path")).map(JsonNode::asText).toList();
            List<byte[]> path = MerkleTree.path(vector.path("index").asInt(), leaves.subList(0, size));
            assertEquals(expected, path.stream().map(Sha256::hex).toList());
        });
    }

    @TestFactory
    Stream<DynamicTest> leadsNoSpoiltPathToTheRoot() {
        return Vectors.tests(
                vectors.path("spoilt"),
                spoilt -> Vectors.each(vectors.path("paths"))
                        .filter(path -> path.path("size").asInt() > 1)
                        .forEach(path -> assertOtherRoot(spoilt.path("do").asText(), path)));
    }

    @Test
    void leadsEveryLeafOfEverySizeToTheRoot() {
        for (int size = 1; size <= 40; size++) {
            List<byte[]> many = new ArrayList<>();
            for (int i = 0; i < size; i++) {
                many.add(MerkleTree.leafHash(new byte[] {(byte) i}));
            }
            String root = Sha256.hex(MerkleTree.root(many));
            for (int i = 0; i < size; i++) {
                assertEquals(root, Sha256.hex(MerkleTree.rootFrom(many.get(i), i, size, MerkleTree.path(i, many))));
            }
        }
    }

    @Test
    void refusesAnIndexOutsideTheTree() {
        assertThrows(IllegalArgumentException.class, () -> MerkleTree.path(8, leaves));
        assertThrows(IllegalArgumentException.class, () -> MerkleTree.path(-1, leaves));
        assertThrows(IllegalArgumentException.class, () -> MerkleTree.path(0, List.of()));
        assertThrows(IllegalArgumentException.class, () -> MerkleTree.rootFrom(leaves.get(0), 1, 1, List.of()));
    }

    private void assertOtherRoot(String what, JsonNode vector) {
        int index = vector.path("index").asInt();
        int size = vector.path("size").asInt();
        List<byte[]> path = new ArrayList<>(MerkleTree.path(index, leaves.subList(0, size)));
        byte[] leaf = leaves.get(index).clone();
        String root = Sha256.hex(MerkleTree.root(leaves.subList(0, size)));
        switch (what) {
            case "index - 1" -> index--;
            case "index + 1" -> index++;
            case "size + 1" -> size = Integer.highestOneBit(size) * 2 + 1;
            case "size * 2" -> size *= 2;
            case "leaf's bit" -> leaf[31] ^= 1;
            case "path's first bit" -> path.set(0, changed(path.get(0)));
            case "path's last dropped" -> path.remove(path.size() - 1);
            case "path's first dropped" -> path.remove(0);
            case "path with a hash too many" -> path.add(path.get(0));
            case "path turned round" -> {
                Collections.reverse(path);
                if (path.size() == 1) {
                    path.set(0, changed(path.get(0)));
                }
            }
            default -> throw new IllegalArgumentException(what);
        }
        String found;
        try {
            found = Sha256.hex(MerkleTree.rootFrom(leaf, index, size, path));
        } catch (IllegalArgumentException refused) {
            found = "refused";
        }
        assertTrue(!root.equals(found), what + " of " + vector.path("desc").asText());
    }

    private static byte[] changed(byte[] hash) {
        byte[] other = hash.clone();
        other[0] ^= 1;
        return other;
    }
}
