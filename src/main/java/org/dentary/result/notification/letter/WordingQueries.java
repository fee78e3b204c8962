package org.dentary.result.notification.letter;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;

/** Reads and writes the editions of letters. */
@ApplicationScoped
class WordingQueries {
    private static final String COLUMNS =
            "select outcome, edition, wording, written_by, written_at, reviewed_by, reviewed_at from letter_wording";
    private static final String ALL = COLUMNS + """
             order by array_position(array['DETECTED', 'NOT_DETECTED', 'INCONCLUSIVE', 'UNSUITABLE', 'NOT_TESTED',
                   'NOT_ATTRIBUTABLE', 'CORRECTION'], outcome),
                   edition desc
            """;
    private static final String REVIEWED =
            COLUMNS + " where outcome = :outcome and reviewed_by is not null order by edition desc limit 1";
    private static final String INSERT = """
            insert into letter_wording (outcome, edition, wording, written_by, written_at)
            values (:outcome, :edition, :wording, :by, :now)
            """;
    private static final String REVIEW = """
            update letter_wording set reviewed_by = :by, reviewed_at = :now
             where outcome = :outcome and edition = :edition and reviewed_by is null
            """;

    private final EntityManager entities;

    WordingQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** Every edition, newest first within its outcome. */
    @SuppressWarnings("unchecked")
    List<WordingView> all() {
        return entities.createNativeQuery(ALL, WordingView.class).getResultList();
    }

    /** The newest reviewed edition; empty or one. */
    @SuppressWarnings("unchecked")
    List<WordingView> reviewed(String outcome) {
        return entities.createNativeQuery(REVIEWED, WordingView.class)
                .setParameter("outcome", outcome)
                .getResultList();
    }

    void insert(String outcome, int edition, String wording, String by, Instant now) {
        entities.createNativeQuery(INSERT)
                .setParameter("outcome", outcome)
                .setParameter("edition", edition)
                .setParameter("wording", wording)
                .setParameter("by", by)
                .setParameter("now", now)
                .executeUpdate();
    }

    void review(String outcome, int edition, String by, Instant now) {
        entities.createNativeQuery(REVIEW)
                .setParameter("outcome", outcome)
                .setParameter("edition", edition)
                .setParameter("by", by)
                .setParameter("now", now)
                .executeUpdate();
    }
}
