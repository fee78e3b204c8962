package org.dentary.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.dentary.platform.DatabaseTestResource;
import org.jboss.logging.Logger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A large season: 20,000 codes with five events each, sealed, exported and checked outside. */
@Tag("slow")
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class LedgerScaleTest {

    private static final Logger LOG = Logger.getLogger(LedgerScaleTest.class);
    private static final int CODES = 20_000;
    private static final int AT_ONCE = 500;

    @Inject
    LedgerStore store;

    @Inject
    CheckpointService checkpoints;

    @Test
    void sealsExportsAndChecksALargeSeason() throws Exception {
        List<String> codes = IntStream.range(0, CODES)
                .mapToObj(i -> "L" + UUID.randomUUID())
                .sorted()
                .toList();
        timed("append 100,000 events, 500 a statement", () -> {
            for (int from = 0; from < CODES; from += AT_ONCE) {
                appendFiveEach(codes.subList(from, from + AT_ONCE));
            }
            return null;
        });
        timed("seal them", checkpoints::sealAll);
        timed("look for more", checkpoints::sealAll);
        UUID event = store.chain(codes.get(77)).get(2).id();
        timed("prove one", () -> checkpoints.proof(event).orElseThrow());
        Path file = Files.createTempFile(Path.of("target"), "season", ".jsonl");
        timed("export", () -> {
            try (OutputStream out = Files.newOutputStream(file)) {
                checkpoints.export(out);
            }
            return null;
        });
        LOG.infof("the file has %d bytes", Files.size(file));
        OutsideCheck.Outcome outcome =
                timed("check outside", () -> OutsideCheck.compiled().run(List.of(file.toString())));
        assertEquals(0, outcome.status(), outcome.output());
        Files.delete(file);
    }

    private void appendFiveEach(List<String> codes) {
        QuarkusTransaction.requiringNew().run(() -> {
            List<ChainHead> heads = codes.stream().map(ChainHead::empty).toList();
            for (int i = 0; i < 5; i++) {
                EventDraft draft = LedgerFixture.aDraft("X", i == 0 ? "COLLECTED" : "MOVED")
                        .withHandOver(UUID.randomUUID())
                        .withCounterparty("person-9")
                        .atPlace("store-3");
                heads = store
                        .appendAll(heads, codes.stream().map(draft::onChain).toList())
                        .stream()
                        .map(ChainHead::after)
                        .toList();
            }
        });
    }

    private static <T> T timed(String what, Callable<T> work) throws Exception {
        long before = System.nanoTime();
        T result = work.call();
        Duration taken = Duration.ofNanos(System.nanoTime() - before);
        LOG.infof("%s: %d ms", what, taken.toMillis());
        return result;
    }
}
