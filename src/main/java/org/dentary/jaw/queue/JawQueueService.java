package org.dentary.jaw.queue;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;

/** Jaws with something to do. */
@ApplicationScoped
public class JawQueueService {
    static final List<String> TASKS = List.of("READ", "READ_AGAIN", "DECIDE");
    static final int MOST = 500;

    private final JawQueueQueries queries;

    JawQueueService(JawQueueQueries queries) {
        this.queries = queries;
    }

    /**
     * Jaws with something to do, longest waiting first, at most 500.
     *
     * @param station null: every station
     * @param task {@code READ}, {@code READ_AGAIN}, {@code DECIDE}, or null for all
     */
    public List<JawTask> queue(String station, String task) {
        return queries.queue(station, task, MOST);
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
