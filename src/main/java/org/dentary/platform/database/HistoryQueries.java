package org.dentary.platform.database;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;

/**
 * Empties a column of old rows in {@code history} where what stood in it was erased. The service's role may not change
 * history otherwise; which columns it may empty stands in the database.
 */
@ApplicationScoped
public class HistoryQueries {
    private static final String ERASE =
            "select erase_from_history(:table, :column, case when cast(:key as text) is null then null"
                    + " else array[cast(:key as text)] end, cast(:words as text))";

    private final EntityManager entities;

    HistoryQueries(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * Empties it in the caller's transaction, after today's row was: that change leaves an old row as well.
     *
     * @param key of the row; null for every row
     * @param words only where it holds these; null: whatever it holds
     */
    public void erase(String table, String column, String key, String words) {
        entities.createNativeQuery(ERASE)
                .setParameter("table", table)
                .setParameter("column", column)
                .setParameter("key", key)
                .setParameter("words", words)
                .getSingleResult();
    }
}
