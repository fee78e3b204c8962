package org.dentary.custody;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.arc.Arc;
import io.quarkus.arc.ManagedContext;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.sql.DataSource;
import org.dentary.SeasonFixture;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.CustodyQueries;
import org.dentary.custody.chain.Head;
import org.dentary.custody.event.CustodyEventService;
import org.dentary.custody.event.RecordCustodyEvent;
import org.dentary.ledger.Chain;
import org.dentary.ledger.ChainHead;
import org.dentary.ledger.CheckpointService;
import org.dentary.ledger.LedgerEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** Many writers at once leave whole chains, and nobody can change what was written. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class CustodyUnderLoadTest {
    private static final int WRITERS = 16;
    private static final int ACTS_EACH = 12;
    private static final int CODES = 40;

    @Inject
    CustodyFixture fixture;

    @Inject
    CustodyEventService events;

    @Inject
    CustodyQueries queries;

    @Inject
    CheckpointService checkpoints;

    @Inject
    LedgerStore ledger;

    @Inject
    DataSource database;

    @Inject
    Clock clock;

    @Test
    void sixteenWritersOverOverlappingCodesAndACheckpointerLeaveWholeChains() throws Exception {
        Instant collectedAt = clock.instant().minus(Duration.ofHours(1));
        List<String> codes = fixture.collected(CODES, collectedAt);
        ExecutorService pool = Executors.newFixedThreadPool(WRITERS + 1);
        List<Future<Integer>> written = new ArrayList<>();
        for (int i = 0; i < WRITERS; i++) {
            Random random = new Random(i);
            written.add(pool.submit(inRequest(() -> write(codes, random))));
        }
        Future<Integer> sealed = pool.submit(inRequest(this::seal));
        int expected = CODES;
        for (Future<Integer> one : written) {
            expected += one.get();
        }
        sealed.get();
        pool.shutdown();
        Map<String, Head> heads = queries.heads(codes);
        int found = 0;
        for (Map.Entry<String, List<LedgerEvent>> chain : ledger.chains(codes).entrySet()) {
            Head head = heads.get(chain.getKey());
            ChainHead end = new ChainHead(head.code(), head.sequence(), head.hash());
            assertEquals(List.of(), Chain.verify(chain.getValue(), end));
            assertEquals(head.sequence(), chain.getValue().size());
            found += chain.getValue().size();
        }
        assertEquals(expected, found);
    }

    private int write(List<String> codes, Random random) {
        fixture.as("sampler");
        int written = 0;
        for (int i = 0; i < ACTS_EACH; i++) {
            List<String> some =
                    codes.stream().filter(code -> random.nextInt(4) == 0).toList();
            if (!some.isEmpty()) {
                // In an order of its own, as two people scan the same load.
                List<String> shuffled = new ArrayList<>(some);
                java.util.Collections.shuffle(shuffled, random);
                events.record(UUID.randomUUID(), moved(shuffled), null);
                written += some.size();
            }
        }
        return written;
    }

    private RecordCustodyEvent moved(List<String> codes) {
        return new RecordCustodyEvent(
                codes,
                CustodyKind.MOVED,
                clock.instant().atOffset(ZoneOffset.UTC),
                SeasonFixture.STATION,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                List.of(),
                null);
    }

    private int seal() {
        for (int i = 0; i < 5; i++) {
            checkpoints.sealAll();
        }
        return 0;
    }

    @Test
    void theServicesRoleCannotChangeWhatWasRecorded() throws SQLException {
        String code = fixture.collected(1, clock.instant().minusSeconds(60)).get(0);
        refused("update ledger_event set kind = 'LOST' where chain = '" + code + "'");
        refused("delete from ledger_event where chain = '" + code + "'");
        refused("truncate ledger_event cascade");
        refused("update checkpoint set root = 'x'");
        refused("delete from checkpoint_leaf");
        assertEquals(1, ledger.chain(code).size());
    }

    @Test
    void whoeverGoesRoundTheServiceShows() throws SQLException {
        String code = fixture.collected(1, clock.instant().minusSeconds(60)).get(0);
        Head head = queries.head(code).orElseThrow();
        ChainHead end = new ChainHead(head.code(), head.sequence(), head.hash());
        assertEquals(List.of(), Chain.verify(ledger.chain(code), end));
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("update custody_head set sequence = 2 where code = '" + code + "'");
        }
        Head moved = queries.head(code).orElseThrow();
        assertTrue(!Chain.verify(ledger.chain(code), new ChainHead(code, moved.sequence(), moved.hash()))
                .isEmpty());
    }

    private void refused(String sql) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            SQLException refusal = assertThrows(SQLException.class, () -> statement.executeUpdate(sql), sql);
            assertEquals("42501", refusal.getSQLState(), sql);
        }
    }

    private static <T> Callable<T> inRequest(Callable<T> work) {
        return () -> {
            ManagedContext request = Arc.container().requestContext();
            request.activate();
            try {
                return work.call();
            } finally {
                request.terminate();
            }
        };
    }
}
