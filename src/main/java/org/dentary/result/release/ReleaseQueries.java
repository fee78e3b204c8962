package org.dentary.result.release;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.dentary.result.WaitingView;
import org.hibernate.Session;

/** What waits for release and what was released. */
@ApplicationScoped
class ReleaseQueries {
    private static final String STATE = """
            select coalesce(a.same_as, a.kit) as kit, l.derived_outcome, l.outcome, l.unit, l.season, s.time_zone,
                   a.not_attributable
              from animal a join station s on s.code = a.station join line l on l.kit = coalesce(a.same_as, a.kit) and l.disease = :disease
               and l.closed_at is null
             where a.kit = :kit
            """;
    private static final String HOLD = """
            select kit from animal where kit = :kit or kit = (select same_as from animal where kit = :kit)
             order by kit for update
            """;
    private static final String RECORDERS = """
            select distinct f.recorded_by from finding f join finding_specimen fs on fs.finding = f.id
              join label l on l.code = fs.code join animal a on a.kit = l.kit_bound
             where (a.kit = :kit and a.same_as is null or a.same_as = :kit) and f.disease = :disease and f.finding = 'DETECTED'
               and f.status in ('FINAL', 'CORRECTED')
               and not exists (select 1 from finding c where c.corrects = f.id)
            """;
    private static final String INCIDENT_OPEN = """
            select count(*) from incident i join line l on l.disease = i.disease and l.closed_at is null
             where l.kit = :kit and l.disease = :disease and i.state = 'OPEN'
               and (i.unit is not distinct from l.unit
                    or exists (select 1 from incident_animal a where a.incident = i.id and a.kit = l.kit))
            """;
    private static final String NEWEST = """
            select kit, disease, derived_outcome, reason, by_actor, at from release
             where kit = :kit and disease = :disease order by id desc limit 1
            """;
    private static final String INSERT = """
            insert into release (kit, disease, derived_outcome, reason, by_actor, at)
            values (:kit, :disease, :outcome, :reason, :by, :at)
            """;
    private static final String OPEN = """
            select l.kit, l.disease, l.derived_outcome, coalesce(l.unit, 'UNKNOWN'), l.station, l.died_on,
                   coalesce(e.explanation, ''), e.review, e.derived_at,
                   not exists (select 1 from line o where o.closed_at is null and o.unit = l.unit and o.disease = l.disease
                                and o.kit <> l.kit and o.outcome = 'DETECTED')
              from line l left join outcome_explanation e on e.kit = l.kit and e.disease = l.disease
             where l.closed_at is null and l.exclusion = '' and l.derived_outcome <> l.outcome
               and (l.derived_outcome = 'SUSPECT' or (l.derived_outcome = 'DETECTED' and l.outcome <> 'DETECTED'))
             order by l.derived_outcome, e.derived_at, l.kit
            """;
    private final EntityManager entities;

    ReleaseQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** An animal's outcomes for one disease, by the kit that counts. */
    record State(
            String kit,
            String derivedOutcome,
            String outcome,
            String unit,
            String season,
            String timeZone,
            Boolean inDoubt) {}

    @SuppressWarnings("unchecked")
    Optional<State> state(String kit, String disease) {
        return ((List<State>) entities.createNativeQuery(STATE, State.class)
                        .setParameter("kit", kit)
                        .setParameter("disease", disease)
                        .getResultList())
                .stream().findFirst();
    }

    /** Keeps others from releasing anything of the animal until the transaction ends. */
    void hold(String kit) {
        entities.createNativeQuery(HOLD).setParameter("kit", kit).getResultList();
    }

    /** Whether a first detection of the disease in the animal's unit is still being looked into. */
    boolean incidentIsOpen(String kit, String disease) {
        return ((Number) entities.createNativeQuery(INCIDENT_OPEN)
                                .setParameter("kit", kit)
                                .setParameter("disease", disease)
                                .getSingleResult())
                        .longValue()
                > 0;
    }

    @SuppressWarnings("unchecked")
    List<String> recorders(String kit, String disease) {
        return entities.createNativeQuery(RECORDERS)
                .setParameter("kit", kit)
                .setParameter("disease", disease)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    Optional<ReleaseView> newest(String kit, String disease) {
        return ((List<ReleaseView>) entities.createNativeQuery(NEWEST, ReleaseView.class)
                        .setParameter("kit", kit)
                        .setParameter("disease", disease)
                        .getResultList())
                .stream().findFirst();
    }

    void insert(String kit, String disease, String outcome, String reason, String by, Instant at) {
        entities.unwrap(Session.class)
                .createNativeMutationQuery(INSERT)
                .setParameter("kit", kit)
                .setParameter("disease", disease)
                .setParameter("outcome", outcome)
                .setParameter("reason", reason, String.class)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }

    /** Suspicions and unreleased detections, detections first, oldest first. */
    @SuppressWarnings("unchecked")
    List<WaitingView> open() {
        return entities.createNativeQuery(OPEN, WaitingView.class).getResultList();
    }
}
