package org.dentary.ledger;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import javax.sql.DataSource;
import org.dentary.platform.problem.RuleBroken;

/**
 * Seals the ledger and hands out what outsiders need to check it: checkpoints, proofs, the export and the public key.
 * Writers of events are never made to wait for a checkpoint.
 */
@ApplicationScoped
public class CheckpointService {

    private final CheckpointQueries queries;
    private final LedgerStore store;
    private final CheckpointKey key;
    private final DataSource database;
    private final Clock clock;

    CheckpointService(
            CheckpointQueries queries, LedgerStore store, CheckpointKey key, DataSource database, Clock clock) {
        this.queries = queries;
        this.store = store;
        this.key = key;
        this.database = database;
        this.clock = clock;
    }

    /**
     * A checkpoint that was asked for.
     *
     * @param created false if it was there already
     */
    public record Made(Checkpoint checkpoint, boolean created) {}

    /**
     * Seals all committed events that no checkpoint seals yet, be there none.
     *
     * @param id chosen by the client; the id of a checkpoint that exists gives that one back and changes nothing
     */
    @Transactional
    public Made checkpoint(UUID id) {
        return make(id, true);
    }

    /** The last checkpoint after all committed events are sealed; a new one only if there is something to seal. */
    @Transactional
    public Checkpoint sealAll() {
        return make(UUID.randomUUID(), false).checkpoint();
    }

    /** Seals what has come since, as often as {@code dentary.checkpoint.every} says. */
    @Scheduled(
            every = "{dentary.checkpoint.every}",
            delayed = "{dentary.checkpoint.delay}",
            concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    @Transactional
    void onSchedule() {
        make(UUID.randomUUID(), false);
    }

    /** The checkpoint of that number. */
    public Optional<Checkpoint> find(long number) {
        return queries.newest(number + 1, 1).stream()
                .filter(checkpoint -> checkpoint.number() == number)
                .findFirst();
    }

    /** Checkpoints with a number below {@code before}, newest first, at most {@code count}. */
    public List<Checkpoint> checkpoints(long before, int count) {
        return queries.newest(before, count);
    }

    /** How many events no checkpoint seals yet. */
    public long unsealed() {
        return queries.countUnsealed();
    }

    /** The checkpoint that seals an event; empty if none does yet or the event is unknown. */
    public Optional<Checkpoint> sealing(UUID event) {
        return queries.sealing(event).map(CheckpointQueries.Sealing::checkpoint);
    }

    /**
     * The proof that an event lies under its checkpoint; empty if no checkpoint seals it yet or it is unknown.
     *
     * @throws RuleBroken {@code LEDGER_DIFFERS} if the event is no longer what was sealed
     */
    public Optional<InclusionProof> proof(UUID event) {
        return queries.sealing(event).flatMap(sealing -> store.find(event).map(found -> prove(found, sealing)));
    }

    private InclusionProof prove(LedgerEvent event, CheckpointQueries.Sealing sealing) {
        List<String> leaves = queries.leaves(sealing.checkpoint().number());
        String sealed = leaves.get(sealing.index());
        String found = Sha256.hex(event.bytes());
        if (!sealed.equals(event.hash()) || !sealed.equals(found)) {
            throw new RuleBroken(
                    "LEDGER_DIFFERS",
                    "Event " + event.id() + " at position " + event.sequence() + " of chain " + event.chain()
                            + " is not what checkpoint "
                            + sealing.checkpoint().number() + " sealed: expected hash " + sealed + ", found " + found
                            + "; keep the database as it is and tell whoever answers for the records");
        }
        return InclusionProof.of(event, sealing.index(), leaves, sealing.checkpoint());
    }

    /** Where events lie under checkpoints, by event; those that no checkpoint seals yet are left out. */
    public Map<UUID, Seal> seals(Collection<UUID> events) {
        return events.isEmpty() ? Map.of() : queries.seals(events);
    }

    /**
     * Proofs for several events, each checkpoint's leaves read and hashed once.
     *
     * @return by event; one that no checkpoint seals yet, or that is no longer what was sealed, is left out
     */
    public Map<UUID, InclusionProof> proofs(Collection<LedgerEvent> events) {
        Map<UUID, Seal> seals = seals(events.stream().map(LedgerEvent::id).toList());
        Map<Long, Checkpoint> checkpoints = new HashMap<>();
        Map<Long, MerkleLevels> trees = new HashMap<>();
        Map<UUID, InclusionProof> proofs = new HashMap<>();
        for (LedgerEvent event : events) {
            Seal seal = seals.get(event.id());
            if (seal != null && seal.hash().equals(Sha256.hex(event.bytes()))) {
                Checkpoint checkpoint = checkpoints.computeIfAbsent(
                        seal.checkpoint(), number -> find(number).orElseThrow());
                proofs.put(
                        event.id(),
                        InclusionProof.of(
                                event, seal.index(), trees.computeIfAbsent(seal.checkpoint(), this::tree), checkpoint));
            }
        }
        return proofs;
    }

    private MerkleLevels tree(long number) {
        return new MerkleLevels(
                queries.leaves(number).stream().map(Checkpoint::leaf).toList());
    }

    /**
     * Writes the whole sealed ledger as JSON lines (see {@link ExportLines}), as of one moment. Call {@link #sealAll}
     * first, and this outside a transaction; the stream is flushed, not closed.
     */
    public void export(OutputStream out) throws IOException {
        Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        queries.export(writer);
    }

    /** The public half of the key that signs checkpoints, as PEM. */
    public String publicKeyPem() {
        return key.get().publicKeyPem();
    }

    /** SHA-256 of the public key, to print where people can compare it. */
    public String keyFingerprint() {
        return key.get().fingerprint();
    }

    private Made make(UUID id, boolean evenOfNothing) {
        SigningKey signing = key.get();
        return LedgerStore.on(database, "make a checkpoint", connection -> {
            queries.oneAtATime(connection);
            Optional<Checkpoint> made = queries.byId(connection, id);
            if (made.isPresent()) {
                return new Made(made.get(), false);
            }
            Checkpoint last = queries.last(connection).orElse(null);
            List<CheckpointQueries.Unsealed> events = queries.unsealed(connection);
            if (events.isEmpty() && last != null && !evenOfNothing) {
                return new Made(last, false);
            }
            List<String> hashes =
                    events.stream().map(CheckpointQueries.Unsealed::hash).toList();
            Checkpoint next = Checkpoint.following(last, id, clock.instant(), hashes, signing);
            queries.keep(connection, next, events);
            return new Made(next, true);
        });
    }
}
