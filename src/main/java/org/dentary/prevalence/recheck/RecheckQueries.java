package org.dentary.prevalence.recheck;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Keeps and reads what a check found. */
@ApplicationScoped
class RecheckQueries {
    private static final String SELECT = """
            select id::text, release, checked_by as checkedBy, checked_at as checkedAt, answers, unchecked, moved
              from report_recheck
            """;
    private static final String INSERT = """
            insert into report_recheck (id, release, checked_by, checked_at, answers, unchecked, moved)
            values (:id, :release, :by, :at, :answers, :unchecked, :moved)
            """;
    private static final String INSERT_MOVED = """
            insert into report_recheck_moved (recheck, position, cut, question, media_type, figure, stored, computed)
            select :id, t.position, cast(t.cut as uuid), t.question, t.type, t.figure, t.stored, t.computed
              from unnest(cast(:cuts as text[]), cast(:questions as text[]), cast(:types as text[]),
                          cast(:figures as text[]), cast(:stored as text[]), cast(:computed as text[]))
                   with ordinality as t(cut, question, type, figure, stored, computed, position)
            """;
    private static final String MOVED = """
            select c.name as cut, m.question, m.media_type, m.figure, m.stored, m.computed
              from report_recheck_moved m join data_cut c on c.id = m.cut
             where m.recheck = :id order by m.position
            """;

    private final EntityManager entities;

    RecheckQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A check without its figures. */
    record Head(
            String id,
            String release,
            String checkedBy,
            Instant checkedAt,
            Integer answers,
            Integer unchecked,
            Integer moved) {
        RecheckView view(List<RecheckView.MovedFigure> figures) {
            return new RecheckView(id, release, checkedBy, checkedAt, answers, unchecked, moved, figures);
        }
    }

    /** A number that moved, with the answer it stands in. */
    record Found(String cut, String question, String mediaType, AnswerRules.Moved moved) {}

    void insert(UUID id, String release, String by, Instant at, int answers, int unchecked, List<Found> found) {
        entities.createNativeQuery(INSERT)
                .setParameter("id", id)
                .setParameter("release", release)
                .setParameter("by", by)
                .setParameter("at", at)
                .setParameter("answers", answers)
                .setParameter("unchecked", unchecked)
                .setParameter("moved", found.size())
                .executeUpdate();
        entities.createNativeQuery(INSERT_MOVED)
                .setParameter("id", id)
                .setParameter("cuts", found.stream().map(Found::cut).toArray(String[]::new))
                .setParameter("questions", found.stream().map(Found::question).toArray(String[]::new))
                .setParameter("types", found.stream().map(Found::mediaType).toArray(String[]::new))
                .setParameter(
                        "figures", found.stream().map(f -> f.moved().figure()).toArray(String[]::new))
                .setParameter(
                        "stored", found.stream().map(f -> f.moved().stored()).toArray(String[]::new))
                .setParameter(
                        "computed",
                        found.stream().map(f -> f.moved().computed()).toArray(String[]::new))
                .executeUpdate();
    }

    @SuppressWarnings("unchecked")
    List<RecheckView> all() {
        return ((List<Head>) entities.createNativeQuery(SELECT + " order by checked_at desc, id", Head.class)
                        .getResultList())
                .stream().map(head -> head.view(List.of())).toList();
    }

    @SuppressWarnings("unchecked")
    Optional<RecheckView> find(UUID id) {
        return ((List<Head>) entities.createNativeQuery(SELECT + " where id = :id", Head.class)
                        .setParameter("id", id)
                        .getResultList())
                .stream()
                        .findFirst()
                        .map(head -> head.view(entities.createNativeQuery(MOVED, RecheckView.MovedFigure.class)
                                .setParameter("id", id)
                                .getResultList()));
    }

    boolean isDone(String release) {
        return !entities.createNativeQuery("select 1 from report_recheck where release = :release limit 1")
                .setParameter("release", release)
                .getResultList()
                .isEmpty();
    }
}
