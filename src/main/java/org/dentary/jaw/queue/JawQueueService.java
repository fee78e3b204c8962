package org.dentary.jaw.queue;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;

/** Jaws with something to do. */
@ApplicationScoped
public class JawQueueService {
    private static final int MOST = 500;

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
        return queries.queue(station, task, null, MOST);
    }

    /** What is to be done about this animal's jaw, or empty. */
    public Optional<JawTask> task(String kit) {
        return queries.queue(null, null, kit, 1).stream().findFirst();
    }
}
