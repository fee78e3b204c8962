package org.dentary.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckpointTest {

    @TempDir
    Path folder;

    private SigningKey key;
    private List<LedgerEvent> events;
    private List<String> hashes;
    private Checkpoint first;
    private Checkpoint second;

    @BeforeEach
    void sealTwice() {
        key = SigningKey.loadOrCreate(folder.resolve("key.pem"));
        events = LedgerFixture.aChain("K7MQ2RTVJ4", 5);
        hashes = events.stream().map(LedgerEvent::hash).toList();
        first = Checkpoint.following(null, UUID.randomUUID(), LedgerFixture.MORNING, hashes, key);
        second = Checkpoint.following(first, UUID.randomUUID(), LedgerFixture.MORNING.plusSeconds(60), List.of(), key);
    }

    @Test
    void findsNothingInCheckpointsAsMade() {
        assertEquals(List.of(), first.verify(null, hashes, key.publicKey()));
        assertEquals(List.of(), second.verify(first, List.of(), key.publicKey()));
    }

    @Test
    void sealsNothingUnderTheRootOfTheEmptyTree() {
        // RFC 9162, 2.1.1: the hash of an empty list is the hash of an empty string.
        assertEquals("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855", second.root());
    }

    @Test
    void namesAChangedADroppedAndASwappedEvent() {
        List<String> changed = new ArrayList<>(hashes);
        changed.set(2, Sha256.hex("other"));
        assertEquals(List.of("root"), whats(first.verify(null, changed, key.publicKey())));
        assertEquals(List.of("tree size", "root"), whats(first.verify(null, hashes.subList(0, 4), key.publicKey())));
        List<String> swapped = new ArrayList<>(hashes);
        Collections.swap(swapped, 0, 1);
        assertEquals(List.of("root"), whats(first.verify(null, swapped, key.publicKey())));
    }

    @Test
    void namesACheckpointThatWasLeftOut() {
        assertEquals(List.of("number", "previous"), whats(second.verify(null, List.of(), key.publicKey())));
    }

    @Test
    void namesASignatureOfAnotherKey() {
        SigningKey other = SigningKey.loadOrCreate(folder.resolve("other.pem"));
        Checkpoint forged = Checkpoint.following(null, first.id(), first.madeAt(), hashes, other);
        assertEquals(List.of("key", "signature"), whats(forged.verify(null, hashes, key.publicKey())));
    }

    @Test
    void namesAColumnThatNoLongerSaysWhatTheBytesSay() {
        Checkpoint moved = new Checkpoint(
                first.number(),
                first.id(),
                first.madeAt().plusSeconds(1),
                first.treeSize(),
                first.root(),
                first.previous(),
                first.bytes(),
                first.signature());
        assertEquals(List.of("made at beside its bytes"), whats(moved.verify(null, hashes, key.publicKey())));
    }

    @Test
    void provesEveryEventItSeals() {
        for (int i = 0; i < events.size(); i++) {
            assertTrue(InclusionProof.of(events.get(i), i, hashes, first).holds(key.publicKey()));
        }
    }

    @Test
    void provesNoOtherEventPlaceOrKey() {
        InclusionProof proof = InclusionProof.of(events.get(2), 2, hashes, first);
        SigningKey other = SigningKey.loadOrCreate(folder.resolve("other.pem"));
        assertFalse(proof.holds(other.publicKey()));
        assertFalse(new InclusionProof(events.get(2), 3, proof.path(), first).holds(key.publicKey()));
        assertFalse(new InclusionProof(events.get(3), 2, proof.path(), first).holds(key.publicKey()));
        assertFalse(new InclusionProof(events.get(2), 2, proof.path(), second).holds(key.publicKey()));
        assertFalse(new InclusionProof(events.get(2), 2, proof.path().subList(1, 3), first).holds(key.publicKey()));
        LedgerEvent relabelled = new LedgerEvent(
                events.get(2).id(),
                "K8",
                3,
                "MOVED",
                events.get(2).bytes(),
                events.get(2).predecessor(),
                events.get(2).hash());
        assertFalse(new InclusionProof(relabelled, 2, proof.path(), first).holds(key.publicKey()));
        assertThrows(IllegalArgumentException.class, () -> InclusionProof.of(events.get(2), 1, hashes, first));
    }

    private static List<String> whats(List<Difference> differences) {
        return differences.stream().map(Difference::what).toList();
    }
}
