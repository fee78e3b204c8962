package org.dentary.result.imports.progress;

import io.quarkus.narayana.jta.runtime.TransactionConfiguration;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import org.dentary.platform.account.CurrentAccount;

/**
 * Tells others how far a large import is while its own transaction is open. Every word of it is a transaction of its own;
 * the work itself holds a row, so that a service which was killed is seen to have let go.
 */
@ApplicationScoped
public class ProgressService {
    /** What an import may take: a hundred thousand rows on a slow machine. */
    public static final int LONGEST_SECONDS = 1800;

    private static final Duration BEGINS_WITHIN = Duration.ofSeconds(10);

    private final ProgressQueries queries;
    private final CurrentAccount account;
    private final Clock clock;

    ProgressService(ProgressQueries queries, CurrentAccount account, Clock clock) {
        this.queries = queries;
        this.account = account;
        this.clock = clock;
    }

    /** Says that it begins; waits for whoever works at the same import. */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    @TransactionConfiguration(timeout = LONGEST_SECONDS)
    public void begin(UUID id, String act, String fileName) {
        queries.begin(id, act, fileName, account.get().actor(), clock.instant());
    }

    /** Says what it is at. */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public void step(UUID id, ImportStep step, int done, int total) {
        queries.step(id, step, done, total, clock.instant());
    }

    /** Says why it was not done. */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public void refuse(UUID id, String why) {
        queries.refuse(id, why);
    }

    /** Marks the caller's transaction as the one that works at it. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void hold(UUID id) {
        queries.hold(id);
    }

    /** Takes it away when the caller's transaction is committed: it is done. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void end(UUID id) {
        queries.end(id);
    }

    /** How far it is; empty where nobody works, or ended without being done, at this import. */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public Optional<ImportProgress> find(UUID id) {
        return queries.find(id).map(row -> view(id, row));
    }

    private ImportProgress view(UUID id, ProgressQueries.Row row) {
        ImportStep step = row.step().isEmpty() ? null : ImportStep.valueOf(row.step());
        boolean running = row.refusal() == null
                && (!queries.isFree(id) || row.movedAt().plus(BEGINS_WITHIN).isAfter(clock.instant()) && step == null);
        return new ImportProgress(
                row.act(),
                running ? "RUNNING" : row.refusal() == null ? "STOPPED" : "REFUSED",
                running ? step : null,
                running ? row.done() : 0,
                running ? row.total() : 0,
                running && step != null ? step.percent(row.done(), row.total()) : 0,
                row.refusal(),
                row.fileName(),
                row.begunAt());
    }
}
