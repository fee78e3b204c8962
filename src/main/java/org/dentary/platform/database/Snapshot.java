package org.dentary.platform.database;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.narayana.jta.TransactionRunnerOptions;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.hibernate.jpa.HibernateHints;

/** One READ ONLY REPEATABLE READ transaction, so that every number of a report is of the same moment. */
@ApplicationScoped
public class Snapshot {
    /** Rows fetched at a time by {@link #stream}: memory stays flat however long the table. */
    public static final int FETCH_SIZE = 1_000;

    /** A stream lasts as long as the other end takes to receive it; the usual minute would cut a large export off. */
    private static final int SLOWEST_DOWNLOAD_SECONDS = 4 * 60 * 60;

    private final EntityManager entities;

    Snapshot(EntityManager entities) {
        this.entities = entities;
    }

    /** Runs the reads in a transaction of their own and answers what they answer. */
    public <T> T read(Callable<T> reads) {
        return within(QuarkusTransaction.requiringNew(), reads);
    }

    private <T> T within(TransactionRunnerOptions transaction, Callable<T> reads) {
        return transaction.call(() -> {
            entities.createNativeQuery("set transaction isolation level repeatable read, read only")
                    .executeUpdate();
            return reads.call();
        });
    }

    /**
     * Streams the rows of a native query within a snapshot of their own.
     *
     * @param query made by the caller when the transaction is open
     * @param each called once per row, in the query's order
     */
    public <T> void stream(Callable<jakarta.persistence.Query> query, Consumer<T> each) {
        this.<T>streamed(query, rows -> rows.forEach(each));
    }

    /** The same for those who ask for one row after another themselves: {@code all} is called once, with every row. */
    public <T> void streamed(Callable<jakarta.persistence.Query> query, Consumer<Stream<T>> all) {
        within(QuarkusTransaction.requiringNew().timeout(SLOWEST_DOWNLOAD_SECONDS), () -> {
            @SuppressWarnings("unchecked")
            Stream<T> rows = query.call()
                    .setHint(HibernateHints.HINT_FETCH_SIZE, FETCH_SIZE)
                    .setHint(HibernateHints.HINT_READ_ONLY, true)
                    .getResultStream();
            try (rows) {
                all.accept(rows);
            }
            return null;
        });
    }
}
