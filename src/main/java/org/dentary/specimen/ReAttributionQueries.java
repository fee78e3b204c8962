package org.dentary.specimen;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Reads and appends re-attributions and what was decided about them. */
@ApplicationScoped
class ReAttributionQueries {
    private static final String COLUMNS = """
            select cast(r.id as text), r.code, r.from_kit, r.to_kit, r.reason, r.evidence, r.asked_by, r.asked_at,
                   case when d.confirmed is null then 'ASKED' when d.confirmed then 'CONFIRMED' else 'REFUSED' end,
                   d.by_actor, d.at, d.reason as decision_reason
              from re_attribution r left join re_attribution_decision d on d.re_attribution = r.id
            """;
    private static final String BY_ID = COLUMNS + " where r.id = :id";
    private static final String OF_ANIMAL = COLUMNS + """
             where r.id in (
                 select x.id
                   from animal_kit k
                   join animal_kit m on m.counted = k.counted
                   join re_attribution x on m.kit in (x.from_kit, x.to_kit)
                  where k.kit = :kit)
             order by r.asked_at, r.id
            """;
    private static final String OPEN_OF_CODE = COLUMNS + " where r.code = :code and d.re_attribution is null";
    private static final String OPEN =
            COLUMNS + " where d.re_attribution is null order by r.asked_at, r.id limit :most";
    private static final String ASK = """
            insert into re_attribution (id, code, from_kit, to_kit, reason, evidence, asked_by, asked_at)
            values (:id, :code, :fromKit, :toKit, :reason, :evidence, :actor, :now)
            """;
    private static final String DECIDE = """
            insert into re_attribution_decision (re_attribution, confirmed, reason, by_actor, at)
            values (:id, :confirmed, cast(:reason as text), :actor, :now)
            """;

    private final EntityManager entities;

    ReAttributionQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    Optional<ReAttributionView> byId(UUID id) {
        return ((List<ReAttributionView>) entities.createNativeQuery(BY_ID, ReAttributionView.class)
                        .setParameter("id", id)
                        .getResultList())
                .stream().findFirst();
    }

    @SuppressWarnings("unchecked")
    List<ReAttributionView> ofAnimal(String kit) {
        return entities.createNativeQuery(OF_ANIMAL, ReAttributionView.class)
                .setParameter("kit", kit)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    Optional<ReAttributionView> openOf(String code) {
        return ((List<ReAttributionView>) entities.createNativeQuery(OPEN_OF_CODE, ReAttributionView.class)
                        .setParameter("code", code)
                        .getResultList())
                .stream().findFirst();
    }

    @SuppressWarnings("unchecked")
    List<ReAttributionView> open(int most) {
        return entities.createNativeQuery(OPEN, ReAttributionView.class)
                .setParameter("most", most)
                .getResultList();
    }

    void ask(UUID id, String code, String fromKit, String toKit, AskReAttribution ask, String actor, Instant now) {
        entities.createNativeQuery(ASK)
                .setParameter("id", id)
                .setParameter("code", code)
                .setParameter("fromKit", fromKit)
                .setParameter("toKit", toKit)
                .setParameter("reason", ask.reason())
                .setParameter("evidence", ask.evidence())
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
    }

    void decide(UUID id, boolean confirmed, String reason, String actor, Instant now) {
        entities.createNativeQuery(DECIDE)
                .setParameter("id", id)
                .setParameter("confirmed", confirmed)
                .setParameter("reason", reason)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
    }
}
