package org.dentary.result.imports.held;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.transaction.Transactional;
import java.io.OutputStream;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.platform.table.CsvTable;

/** Lines left out: each waits until the laboratory reports the same test anew or a person says what came of it. */
@ApplicationScoped
public class HeldLineService {
    private static final String RESOURCE = "held-line";

    private final HeldLineQueries queries;
    private final RepeatableRequests requests;
    private final CurrentAccount current;
    private final Snapshot snapshot;
    private final Clock clock;

    HeldLineService(
            HeldLineQueries queries,
            RepeatableRequests requests,
            CurrentAccount current,
            Snapshot snapshot,
            Clock clock) {
        this.queries = queries;
        this.requests = requests;
        this.current = current;
        this.snapshot = snapshot;
        this.clock = clock;
    }

    /** A line as it is told, and whether it was settled just now. */
    public record Settled(HeldLine line, boolean isNew) {}

    /**
     * Lines left out, those of the newest file first.
     *
     * @param all with those reported since and those settled
     * @param most how many at most
     */
    @SuppressWarnings("unchecked")
    public List<HeldLine> lines(boolean all, int most) {
        return queries.held(all).setMaxResults(most).getResultList();
    }

    /** How many there are. */
    public long count(boolean all) {
        return queries.count(all);
    }

    /** Writes them as CSV, streamed. */
    @ActivateRequestContext
    public void write(boolean all, OutputStream out) {
        try (CsvTable csv = CsvTable.on(out, HeldLine.COLUMNS)) {
            snapshot.<HeldLine>stream(() -> queries.held(all), line -> line.write(csv));
        }
    }

    /**
     * Keeps what came of a line. The same words again change nothing.
     *
     * @throws NotFound if no line of that number was left out of that file
     * @throws RuleBroken (409) if it was settled otherwise
     */
    @Transactional
    public Settled settle(UUID resultImport, int line, SettleLine command) {
        HeldLine there = line(resultImport, line);
        String key = resultImport + "/" + line;
        if (requests.compare(RESOURCE, key, command, there.state().equals("SETTLED")) == Seen.REPLAY) {
            return new Settled(there, false);
        }
        queries.settle(resultImport, line, command.note().strip(), current.get().actor(), clock.instant());
        requests.accept(RESOURCE, key, command);
        return new Settled(line(resultImport, line), true);
    }

    private HeldLine line(UUID resultImport, int line) {
        return queries.line(resultImport, line).stream()
                .findFirst()
                .orElseThrow(() -> new NotFound(
                        "HELD_LINE_UNKNOWN", "No line " + line + " was left out of the import " + resultImport));
    }
}
