package org.dentary.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.problem.RuleBroken;
import org.eclipse.microprofile.config.ConfigProvider;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class LedgerStoreTest {

    @Inject
    LedgerStore store;

    @Inject
    CheckpointService checkpoints;

    @Inject
    DataSource database;

    @Test
    void givesBackWhatWasAppendedByteForByte() {
        String chain = freshChain();
        EventDraft draft = LedgerFixture.aDraft(chain, "STORED")
                .atPlace("store-é-3")
                .withCounterparty("person-9")
                .withHandOver(UUID.randomUUID())
                .with("temperatureCelsius", new BigDecimal("-18.50"));
        List<LedgerEvent> appended = append(draft, LedgerFixture.aDraft(chain, "MOVED"));
        assertEquals(appended, store.chain(chain));
        assertEquals(List.of(), Chain.verify(store.chain(chain), ChainHead.after(appended.get(1))));
        assertEquals(appended.get(0), store.find(draft.id()).orElseThrow());
        assertEquals(Map.of(chain, ChainHead.after(appended.get(1))), store.heads(List.of(chain, "NONE")));
        assertEquals(
                "-18.50",
                appended.get(0)
                        .content()
                        .path("fields")
                        .path("temperatureCelsius")
                        .asText());
    }

    @Test
    void takesFiveHundredChainsAtOnceAndReadsThemAtOnce() {
        List<String> codes = IntStream.range(0, 500).mapToObj(i -> freshChain()).toList();
        EventDraft first = LedgerFixture.aDraft("X", "COLLECTED");
        UUID handOver = UUID.randomUUID();
        EventDraft second = LedgerFixture.aDraft("X", "HANDOVER_ACCEPTED").withHandOver(handOver);
        append(codes.stream().map(first::onChain).toArray(EventDraft[]::new));
        List<LedgerEvent> moved = appendAfter(
                store.heads(codes), codes.stream().map(second::onChain).toArray(EventDraft[]::new));
        assertEquals(500, moved.stream().filter(event -> event.sequence() == 2).count());
        Map<String, List<LedgerEvent>> chains = store.chains(codes);
        assertEquals(500, chains.size());
        chains.values().forEach(chain -> assertEquals(List.of(), Chain.verify(chain)));
    }

    @Test
    void refusesAPositionThatIsTakenAndWritesNothingOfTheLot() {
        String chain = freshChain();
        String other = freshChain();
        append(LedgerFixture.aDraft(chain, "COLLECTED"));
        assertThrows(
                IllegalStateException.class,
                () -> QuarkusTransaction.requiringNew()
                        .run(() -> store.appendAll(
                                List.of(ChainHead.empty(chain)),
                                List.of(LedgerFixture.aDraft(other, "MOVED"), LedgerFixture.aDraft(chain, "MOVED")))));
        assertEquals(1, store.chain(chain).size());
        assertEquals(List.of(), store.chain(other));
    }

    @Test
    void refusesToAppendOutsideATransaction() {
        EventDraft draft = LedgerFixture.aDraft(freshChain(), "MOVED");
        assertThrows(IllegalStateException.class, () -> store.appendAll(List.of(), List.of(draft)));
        assertEquals(List.of(), store.chain(draft.chain()));
    }

    @Test
    void keepsWhatIsRedactedBesideTheChainUntilItIsErased() {
        String chain = freshChain();
        EventDraft draft = LedgerFixture.aDraft(chain, "MOVED")
                .with("reason", Redacted.of("bag torn by a dog"))
                .with("photos", List.of(Redacted.of(new byte[] {0, 1, (byte) 255})));
        LedgerEvent event = append(draft).get(0);
        assertFalse(event.bytes().contains("torn"));
        Map<String, Redacted> kept = store.secrets(List.of(event.id())).get(event.id());
        assertEquals(Set.of("reason", "photos.0"), kept.keySet());
        assertEquals("bag torn by a dog", kept.get("reason").text());
        assertEquals(
                kept.get("reason").digest(),
                event.content().path("fields").path("reason").path("sha256").asText());
        assertTrue(erase(event.id(), "reason"));
        assertFalse(erase(event.id(), "reason"));
        assertEquals(
                Set.of("photos.0"),
                store.secrets(List.of(event.id())).get(event.id()).keySet());
        assertEquals(List.of(), Chain.verify(store.chain(chain)));
    }

    @TestFactory
    Stream<DynamicTest> keepsTheServiceFromChangingWhatIsRecorded() {
        append(LedgerFixture.aDraft(freshChain(), "COLLECTED"));
        checkpoints.sealAll();
        return Stream.of(
                        "update ledger_event set kind = 'LOST'",
                        "delete from ledger_event",
                        "truncate ledger_event cascade",
                        "update ledger_secret set content = ''",
                        "update checkpoint set signature = ''",
                        "delete from checkpoint",
                        "truncate checkpoint cascade",
                        "update checkpoint_leaf set index = index + 1",
                        "delete from checkpoint_leaf",
                        "truncate checkpoint_leaf",
                        "alter table ledger_event disable trigger user",
                        "drop table checkpoint_leaf")
                .map(sql -> DynamicTest.dynamicTest(sql, () -> {
                    try (Connection connection = database.getConnection();
                            Statement statement = connection.createStatement()) {
                        SQLException refusal = assertThrows(SQLException.class, () -> statement.execute(sql));
                        // insufficient_privilege (PostgreSQL, appendix A)
                        assertEquals("42501", refusal.getSQLState(), refusal.getMessage());
                    }
                }));
    }

    @TestFactory
    Stream<DynamicTest> keepsEvenTheOwnerFromChangingItByMistake() {
        append(LedgerFixture.aDraft(freshChain(), "COLLECTED"));
        checkpoints.sealAll();
        return Stream.of(
                        "update ledger_event set kind = 'LOST'",
                        "delete from checkpoint_leaf",
                        "truncate checkpoint cascade")
                .map(sql -> DynamicTest.dynamicTest(sql, () -> {
                    try (Connection connection = owner();
                            Statement statement = connection.createStatement()) {
                        SQLException refusal = assertThrows(SQLException.class, () -> statement.execute(sql));
                        assertTrue(refusal.getMessage().contains("append-only"), refusal.getMessage());
                    }
                }));
    }

    @Test
    void sealsEachEventOnceAndAReplayedCheckpointChangesNothing() {
        List<LedgerEvent> events = append(LedgerFixture.aDraft(freshChain(), "COLLECTED"));
        UUID id = UUID.randomUUID();
        Checkpoint made = checkpoints.checkpoint(id).checkpoint();
        assertEquals(made, checkpoints.sealing(events.get(0).id()).orElseThrow());
        append(LedgerFixture.aDraft(freshChain(), "COLLECTED"));
        assertEquals(new CheckpointService.Made(made, false), checkpoints.checkpoint(id));
        Checkpoint next = checkpoints.sealAll();
        assertEquals(made.number() + 1, next.number());
        assertEquals(made.hash(), next.previous());
        assertEquals(next, checkpoints.sealAll(), "nothing new, no new checkpoint");
        CheckpointService.Made empty = checkpoints.checkpoint(UUID.randomUUID());
        assertTrue(empty.created(), "asked for, even of nothing");
        assertEquals(0, empty.checkpoint().treeSize());
        assertEquals(
                List.of(next.number(), made.number()),
                checkpoints.checkpoints(next.number() + 1, 2).stream()
                        .map(Checkpoint::number)
                        .toList());
    }

    @Test
    void theScheduleSealsWhatCameSinceAndNothingWhenNothingDid() throws NoSuchMethodException {
        LedgerEvent event =
                append(LedgerFixture.aDraft(freshChain(), "COLLECTED")).get(0);
        assertTrue(checkpoints.sealing(event.id()).isEmpty());
        checkpoints.onSchedule();
        Checkpoint sealed = checkpoints.sealing(event.id()).orElseThrow();
        checkpoints.onSchedule();
        assertEquals(sealed, checkpoints.checkpoints(Long.MAX_VALUE, 1).get(0), "nothing new, no new checkpoint");
        // The framework runs it as often as the configuration says; off in tests, an hour unless set.
        Scheduled schedule =
                CheckpointService.class.getDeclaredMethod("onSchedule").getAnnotation(Scheduled.class);
        assertEquals("{dentary.checkpoint.every}", schedule.every());
    }

    @Test
    void provesASealedEventAndNoneThatIsNotSealed() throws IOException {
        LedgerEvent event =
                append(LedgerFixture.aDraft(freshChain(), "COLLECTED")).get(0);
        assertTrue(checkpoints.proof(event.id()).isEmpty());
        Checkpoint checkpoint = checkpoints.sealAll();
        InclusionProof proof = checkpoints.proof(event.id()).orElseThrow();
        assertTrue(proof.holds(checkpoint.key()));
        assertTrue(checkpoints.publicKeyPem().replace("\n", "").contains(checkpoint.key()));
        Path file = Files.createTempFile(Path.of("target"), "proof", ".json");
        Files.writeString(file, ExportLines.proof(proof));
        OutsideCheck.Outcome outcome = OutsideCheck.compiled().run(List.of(export().toString(), file.toString()));
        assertEquals(0, outcome.status(), outcome.output());
    }

    /** 16 writers on shared chains, two checkpointers beside them, then everything is verified outside. */
    @Test
    void staysWholeUnderSixteenWritersAndTwoCheckpointers() throws Exception {
        List<String> shared =
                IntStream.range(0, 8).mapToObj(i -> "S" + freshChain()).sorted().toList();
        QuarkusTransaction.requiringNew().run(() -> prepareHeads(shared));
        int rounds = 25;
        AtomicBoolean writing = new AtomicBoolean(true);
        ExecutorService pool = Executors.newFixedThreadPool(18);
        try {
            List<Future<Integer>> checkpointers = IntStream.range(0, 2)
                    .mapToObj(i -> pool.submit(() -> {
                        int made = 0;
                        while (writing.get()) {
                            checkpoints.checkpoint(UUID.randomUUID());
                            made++;
                        }
                        return made;
                    }))
                    .toList();
            List<Callable<Integer>> writers = IntStream.range(0, 16)
                    .<Callable<Integer>>mapToObj(writer -> () -> write(writer, rounds, shared))
                    .toList();
            int written = 0;
            for (Future<Integer> writer : pool.invokeAll(writers)) {
                written += writer.get();
            }
            writing.set(false);
            for (Future<Integer> checkpointer : checkpointers) {
                assertTrue(checkpointer.get() > 1, "checkpoints were made beside the writers");
            }
            checkpoints.sealAll();
            assertEquals(16 * rounds * 4, written);
            Map<String, List<LedgerEvent>> chains = store.chains(shared);
            assertEquals(written, chains.values().stream().mapToInt(List::size).sum());
            chains.forEach((code, events) -> assertEquals(List.of(), Chain.verify(events), code));
            OutsideCheck.Outcome outcome = OutsideCheck.compiled().run(List.of(export().toString()));
            assertEquals(0, outcome.status(), outcome.output());
            assertEquals(count("select count(*) from ledger_event"), count("select count(*) from checkpoint_leaf"));
        } finally {
            writing.set(false);
            pool.shutdownNow();
        }
    }

    @Test
    void showsOutsideWhatWasChangedBehindTheServicesBack() throws Exception {
        String chain = freshChain();
        LedgerEvent event = append(
                        LedgerFixture.aDraft(chain, "COLLECTED"),
                        LedgerFixture.aDraft(chain, "MOVED"),
                        LedgerFixture.aDraft(chain, "MOVED"))
                .get(1);
        checkpoints.sealAll();
        String bytes = event.bytes().replace("person-7", "person-8");
        try (Connection owner = owner();
                Statement statement = owner.createStatement()) {
            owner.setAutoCommit(false);
            statement.execute("alter table ledger_event disable trigger user");
            statement.execute("update ledger_event set bytes = '" + bytes + "', hash = '" + Sha256.hex(bytes)
                    + "' where id = '" + event.id() + "'");
            statement.execute("alter table ledger_event enable trigger user");
            owner.commit();
            OutsideCheck.Outcome outcome = OutsideCheck.compiled().run(List.of(export().toString()));
            assertEquals(1, outcome.status(), outcome.output());
            assertTrue(
                    outcome.output().contains("event " + event.id() + " at position 2 of chain " + chain),
                    outcome.output());
            assertTrue(outcome.output().contains("expected one with hash " + event.hash()), outcome.output());
            RuleBroken refusal = assertThrows(RuleBroken.class, () -> checkpoints.proof(event.id()));
            assertTrue(refusal.getMessage().contains("expected hash " + event.hash()), refusal.getMessage());
            statement.execute("alter table ledger_event disable trigger user");
            statement.execute("update ledger_event set bytes = '" + event.bytes() + "', hash = '" + event.hash()
                    + "' where id = '" + event.id() + "'");
            statement.execute("alter table ledger_event enable trigger user");
            owner.commit();
        }
        assertEquals(
                0, OutsideCheck.compiled().run(List.of(export().toString())).status());
    }

    private int write(int writer, int rounds, List<String> shared) {
        Random random = new Random(writer);
        int written = 0;
        for (int round = 0; round < rounds; round++) {
            List<String> codes = new ArrayList<>(shared);
            Collections.shuffle(codes, random);
            List<String> mine = codes.subList(0, 4);
            written += QuarkusTransaction.requiringNew().call(() -> {
                List<ChainHead> heads = lockHeads(mine);
                List<LedgerEvent> events = store.appendAll(
                        heads,
                        mine.stream()
                                .map(code -> LedgerFixture.aDraft(code, "MOVED").withHandOver(UUID.randomUUID()))
                                .toList());
                moveHeads(events);
                return events.size();
            });
        }
        return written;
    }

    private void prepareHeads(List<String> codes) {
        execute("""
                insert into custody_head (code, sequence, hash, custodian_kind, custodian, last_kind, last_occurred_at,
                                          collected_at)
                select code, 0, repeat('0', 64), 'PERSON', 'T_SAMPLER', 'NONE', now(), now() from unnest(?::text[]) code
                """, codes);
    }

    private List<ChainHead> lockHeads(List<String> codes) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(
                        "select code, sequence, hash from custody_head where code = any(?) order by code for update")) {
            statement.setArray(1, connection.createArrayOf("text", codes.toArray()));
            List<ChainHead> heads = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    heads.add(new ChainHead(row.getString(1), row.getInt(2), row.getString(3)));
                }
            }
            return heads;
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private void moveHeads(List<LedgerEvent> events) {
        String values = events.stream()
                .map(event -> "('" + event.chain() + "'," + event.sequence() + ",'" + event.hash() + "')")
                .collect(Collectors.joining(","));
        execute(
                "update custody_head h set sequence = v.sequence, hash = v.hash from (values " + values
                        + ") v (code, sequence, hash) where h.code = v.code",
                null);
    }

    private void execute(String sql, List<String> codes) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            if (codes != null) {
                statement.setArray(1, connection.createArrayOf("text", codes.toArray()));
            }
            statement.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private long count(String sql) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        }
    }

    private List<LedgerEvent> append(EventDraft... drafts) {
        return QuarkusTransaction.requiringNew().call(() -> store.appendAll(List.of(), List.of(drafts)));
    }

    private List<LedgerEvent> appendAfter(Map<String, ChainHead> heads, EventDraft... drafts) {
        return QuarkusTransaction.requiringNew().call(() -> store.appendAll(heads.values(), List.of(drafts)));
    }

    private boolean erase(UUID event, String name) {
        return QuarkusTransaction.requiringNew().call(() -> store.erase(event, name));
    }

    private Path export() throws IOException {
        Path file = Files.createTempFile(Path.of("target"), "ledger", ".jsonl");
        try (OutputStream out = Files.newOutputStream(file)) {
            checkpoints.export(out);
        }
        return file;
    }

    private static Connection owner() throws SQLException {
        var config = ConfigProvider.getConfig();
        return DriverManager.getConnection(
                config.getValue("quarkus.flyway.jdbc-url", String.class),
                config.getValue("quarkus.flyway.username", String.class),
                config.getValue("quarkus.flyway.password", String.class));
    }

    private static String freshChain() {
        return "T" + UUID.randomUUID().toString().substring(0, 13).toUpperCase();
    }
}
