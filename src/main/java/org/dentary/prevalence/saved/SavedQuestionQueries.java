package org.dentary.prevalence.saved;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Keeps and reads saved questions. */
@ApplicationScoped
class SavedQuestionQueries {
    private static final String SELECT = """
            select id::text, name, season, query, made_by as madeBy, made_at as madeAt, withdrawn, version
              from saved_question
            """;
    private static final String INSERT = """
            insert into saved_question (id, name, season, query, made_by, made_at)
            values (:id, :name, :season, :query, :by, :at)
            """;
    private static final String UPDATE = """
            update saved_question set name = :name, season = :season, query = :query, withdrawn = :withdrawn,
                   version = version + 1 where id = :id
            """;

    private final EntityManager entities;

    SavedQuestionQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    List<SavedQuestionView> offered() {
        return entities.createNativeQuery(
                        SELECT + " where not withdrawn order by lower(name), id", SavedQuestionView.class)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    Optional<SavedQuestionView> find(UUID id) {
        return ((List<SavedQuestionView>)
                        entities.createNativeQuery(SELECT + " where id = :id", SavedQuestionView.class)
                                .setParameter("id", id)
                                .getResultList())
                .stream().findFirst();
    }

    boolean isTaken(String name, UUID byAnother) {
        return !entities.createNativeQuery(
                        "select 1 from saved_question where not withdrawn and lower(name) = lower(:name) and id <> :id")
                .setParameter("name", name)
                .setParameter("id", byAnother)
                .getResultList()
                .isEmpty();
    }

    void insert(UUID id, String name, String season, String query, String by, Instant at) {
        entities.createNativeQuery(INSERT)
                .setParameter("id", id)
                .setParameter("name", name)
                .setParameter("season", season)
                .setParameter("query", query)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }

    void update(UUID id, String name, String season, String query, boolean withdrawn) {
        entities.createNativeQuery(UPDATE)
                .setParameter("id", id)
                .setParameter("name", name)
                .setParameter("season", season)
                .setParameter("query", query)
                .setParameter("withdrawn", withdrawn)
                .executeUpdate();
    }
}
