package org.dentary.result.review;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.result.WaitingView;

/** Reads outcomes that a person should look at, and who did; writes that somebody did. */
@ApplicationScoped
class ReviewQueries {
    /** Odd outcomes, each since it reads so or the last finding that it could rest on, of a kit linked to it too. */
    private static final String ODD = """
            with odd as (
              select e.kit, e.disease, e.explanation, e.review,
                     greatest(e.derived_at,
                              (select max(f.recorded_at) from animal a join label b on b.kit_bound = a.kit
                                 join finding_specimen fs on fs.code = b.code join finding f on f.id = fs.finding
                                where (a.kit = e.kit or a.same_as = e.kit) and f.disease = e.disease)) as since
                from outcome_explanation e where e.review is not null)
            """;

    private static final String UNSEEN = """
              from odd o join line l on l.kit = o.kit and l.disease = o.disease and l.closed_at is null
             where not exists (select 1 from outcome_look k
                                where k.kit = o.kit and k.disease = o.disease and k.since = o.since)
            """;
    private static final String WAITING = ODD + """
            select l.kit, l.disease, l.derived_outcome, coalesce(l.unit, 'UNKNOWN'), l.station, l.died_on, o.explanation,
                   o.review, o.since, false
            """ + UNSEEN + """
               and (cast(:kit as text) is null
                    or (o.since, o.kit, o.disease)
                       > (select p.since, p.kit, p.disease from odd p where p.kit = :kit and p.disease = :disease))
             order by o.since, o.kit, o.disease limit cast(:most as int)
            """;
    private static final String COUNT = ODD + "select count(*)" + UNSEEN;
    private static final String LOOKS = ODD + """
            select k.id::text, k.kit, k.disease, k.review, k.note, k.by_actor, k.at, k.since,
                   exists (select 1 from odd o where o.kit = k.kit and o.disease = k.disease and o.since = k.since)
              from outcome_look k left join outcome_look p on p.id = cast(:before as uuid)
             where (:id = '' or k.id = cast(nullif(:id, '') as uuid))
               and (p.id is null or k.at < p.at or k.at = p.at and k.id > p.id)
             order by k.at desc, k.id limit cast(:most as int)
            """;
    /** Kept as it is until the transaction ends, so that one person looks at it and it is not derived anew meanwhile. */
    private static final String HOLD =
            "select 1 from outcome_explanation where kit = :kit and disease = :disease for no key update";

    private static final String HELD = ODD + """
            select o.review, o.since from odd o where o.kit = :kit and o.disease = :disease
            """;
    private static final String LOOKED_BY =
            "select by_actor from outcome_look where kit = :kit and disease = :disease and since = :since";
    private static final String INSERT = """
            insert into outcome_look (id, kit, disease, since, review, note, by_actor, at)
            values (:id, :kit, :disease, :since, :review, :note, :by, :at)
            """;

    private final EntityManager entities;

    ReviewQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** What is odd about an outcome, and since when it reads so. */
    record Held(String review, Instant since) {}

    /** Of {@link WaitingView}s, oldest first, those after an animal and disease; {@code most} is null for all. */
    Query waiting(String kit, String disease, Integer most) {
        return entities.createNativeQuery(WAITING, WaitingView.class)
                .setParameter("kit", kit)
                .setParameter("disease", disease)
                .setParameter("most", most);
    }

    long count() {
        return ((Number) entities.createNativeQuery(COUNT).getSingleResult()).longValue();
    }

    /** Of {@link LookView}s, newest first, or the one of that id; {@code most} is null for all. */
    Query looks(String id, UUID before, Integer most) {
        return entities.createNativeQuery(LOOKS, LookView.class)
                .setParameter("id", id)
                .setParameter("before", before == null ? null : before.toString())
                .setParameter("most", most);
    }

    /** What is odd about it, empty for nothing. */
    @SuppressWarnings("unchecked")
    Optional<Held> hold(String kit, String disease) {
        entities.createNativeQuery(HOLD)
                .setParameter("kit", kit)
                .setParameter("disease", disease)
                .getResultList();
        return ((List<Held>) entities.createNativeQuery(HELD, Held.class)
                        .setParameter("kit", kit)
                        .setParameter("disease", disease)
                        .getResultList())
                .stream().findFirst();
    }

    /** Who looked at it as it reads since then. */
    @SuppressWarnings("unchecked")
    Optional<String> lookedBy(LookedAt look) {
        return ((List<String>) entities.createNativeQuery(LOOKED_BY)
                        .setParameter("kit", look.kit())
                        .setParameter("disease", look.disease())
                        .setParameter("since", look.since().toInstant())
                        .getResultList())
                .stream().findFirst();
    }

    void insert(UUID id, LookedAt look, String review, String by, Instant at) {
        entities.createNativeQuery(INSERT)
                .setParameter("id", id)
                .setParameter("kit", look.kit())
                .setParameter("disease", look.disease())
                .setParameter("since", look.since().toInstant())
                .setParameter("review", review)
                .setParameter("note", look.note().strip())
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }
}
