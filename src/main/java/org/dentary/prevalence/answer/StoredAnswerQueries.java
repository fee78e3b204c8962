package org.dentary.prevalence.answer;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Reads and keeps report answers; two who ask at once keep the first. */
@ApplicationScoped
class StoredAnswerQueries {
    private static final String FIND =
            "select answer from report_answer where cut = :cut and question = :question and media_type = :type";
    private static final String STORE = """
            insert into report_answer (cut, question, media_type, answer, digest, rule_version, answered_at)
            values (:cut, :question, :type, :answer, :digest, :version, :at) on conflict do nothing
            """;
    private static final String KEYS = """
            select cut::text, question, media_type as mediaType from report_answer
             order by answered_at, cut, question, media_type
            """;
    private static final String ONE = """
            select cut::text, question, media_type, answer, digest, rule_version from report_answer
             where cut = :cut and question = :question and media_type = :type
            """;

    private final EntityManager entities;

    StoredAnswerQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    Optional<String> find(UUID cut, String question, String mediaType) {
        return ((List<String>) entities.createNativeQuery(FIND)
                        .setParameter("cut", cut)
                        .setParameter("question", question)
                        .setParameter("type", mediaType)
                        .getResultList())
                .stream().findFirst();
    }

    void store(UUID cut, String question, String mediaType, String answer, String digest, String version, Instant at) {
        entities.createNativeQuery(STORE)
                .setParameter("cut", cut)
                .setParameter("question", question)
                .setParameter("type", mediaType)
                .setParameter("answer", answer)
                .setParameter("digest", digest)
                .setParameter("version", version)
                .setParameter("at", at)
                .executeUpdate();
    }

    @SuppressWarnings("unchecked")
    List<StoredAnswer.Key> keys() {
        return entities.createNativeQuery(KEYS, StoredAnswer.Key.class).getResultList();
    }

    StoredAnswer one(StoredAnswer.Key key) {
        return (StoredAnswer) entities.createNativeQuery(ONE, StoredAnswer.class)
                .setParameter("cut", UUID.fromString(key.cut()))
                .setParameter("question", key.question())
                .setParameter("type", key.mediaType())
                .getSingleResult();
    }
}
