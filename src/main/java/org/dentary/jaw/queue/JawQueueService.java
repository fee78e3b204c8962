package org.dentary.jaw.queue;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.dentary.platform.database.Snapshot;

/** Jaws with something to do. */
@ApplicationScoped
public class JawQueueService {
    static final List<String> TASKS = List.of("READ", "READ_AGAIN", "DECIDE");
    static final int MOST = 500;

    private final JawQueueQueries queries;
    private final Snapshot snapshot;

    JawQueueService(JawQueueQueries queries, Snapshot snapshot) {
        this.queries = queries;
        this.snapshot = snapshot;
    }

    /**
     * Jaws with something to do, longest waiting first, of each task at most 500.
     *
     * @param station null: every station
     * @param task {@code READ}, {@code READ_AGAIN}, {@code DECIDE}, or null for all
     */
    public List<JawTask> queue(String station, String task) {
        return queue(station, task, MOST);
    }

    List<JawTask> queue(String station, String task, int most) {
        return queries.queue(station, task, most);
    }

    /** Tells each jaw with something to do, longest waiting first, without holding them all. */
    @ActivateRequestContext
    void each(String station, Consumer<JawTask> told) {
        snapshot.stream(() -> queries.all(station), told);
    }

    /** What is to be done about this animal's jaw, or empty. */
    public Optional<JawTask> task(String kit) {
        return queries.task(kit);
    }

    /**
     * How many jaws wait for each task, in the order read, read again, decide; none left out.
     *
     * @param station null: every station
     */
    public List<QueueSize> sizes(String station) {
        List<QueueSize> there = queries.sizes(station);
        return TASKS.stream()
                .map(task -> there.stream()
                        .filter(size -> size.task().equals(task))
                        .findFirst()
                        .orElse(new QueueSize(task, 0, 0)))
                .toList();
    }
}
