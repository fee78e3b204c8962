package org.dentary.custody.identity;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.custody.chain.Answers.Mark;

/** Reads and appends identity exceptions and what was decided about them. */
@ApplicationScoped
class IdentityExceptionQueries {
    private static final String COLUMNS = """
            select cast(e.id as text) as id, e.code, l.kit_bound, s.time_zone, e.problem,
                   cast(e.discrepancy as text) as discrepancy, cast(e.event as text) as event, e.asked_by,
                   coalesce(asker.name, e.asked_by) as asked_by_name, e.asked_at,
                   case when d.exception is null then 'OPEN' when d.granted then 'GRANTED' else 'REFUSED' end as state,
                   d.by_actor, coalesce(decider.name, d.by_actor) as by_name, d.at, cast(d.event as text) as decision_event
              from identity_exception e
              join label l on l.code = e.code
              join kit k on k.code = l.kit_printed
              join kit_block b on b.id = k.block
              join station s on s.code = b.station
              left join identity_exception_decision d on d.exception = e.id
              left join person asker on asker.code = e.asked_by
              left join person decider on decider.code = d.by_actor
            """;
    private static final String BY_ID = COLUMNS + " where e.id = :id";
    private static final String LIST = COLUMNS + """
             where (cast(:state as text) is null
                    or :state = case when d.exception is null then 'OPEN' when d.granted then 'GRANTED' else 'REFUSED' end)
               and (cast(:code as text) is null or e.code = :code)
               and (cast(:askedBy as text) is null or e.asked_by = :askedBy)
               and (cast(:after as text) is null
                    or (e.asked_at, cast(e.id as text)) < (cast(:after as timestamptz), cast(:afterId as text)))
             order by e.asked_at desc, cast(e.id as text) desc limit :most
            """;
    private static final String OF_CODES = COLUMNS + " where e.code = any(:codes) order by e.asked_at, e.id";
    /** A code and what it was cut from, however often. */
    private static final String LINEAGE = """
            with recursive lineage (code, of) as (
                select code, code from unnest(cast(:codes as text[])) as c (code)
                union
                select s.parent, l.of from specimen s join lineage l on s.code = l.code where s.parent is not null)
            select l.of, l.code from lineage l where exists (select 1 from identity_exception e where e.code = l.code)
             order by 1, 2
            """;

    private static final String OF_ANIMAL = """
            select distinct e.code
              from animal_kit k
              join animal_kit m on m.counted = k.counted
              join label l on l.kit_bound = m.kit
              join identity_exception e on e.code = l.code
             where k.kit = :kit order by 1
            """;
    private static final String IS_SPECIMEN = "select exists (select 1 from specimen where code = :code)";
    private static final String IS_RECEIVED = """
            select exists (select 1 from ledger_event where chain = :code and kind = 'RECEIVED')
                or exists (select 1 from custody_head h join laboratory b on b.code = h.custodian where h.code = :code)
            """;
    private static final String DISCREPANCY = "select code from discrepancy where id = :id";
    private static final String ASK = """
            insert into identity_exception (id, code, problem, discrepancy, event, asked_by, asked_at)
            values (:id, :code, :problem, cast(:discrepancy as uuid), :event, :actor, :now)
            """;
    private static final String DECIDE = """
            insert into identity_exception_decision (exception, asked_by, granted, event, by_actor, at)
            values (:id, :askedBy, :granted, :event, :actor, :now)
            """;

    private final EntityManager entities;

    IdentityExceptionQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** An exception with its decision, without the texts of its events. */
    record Row(
            String id,
            String code,
            String kit,
            String zone,
            String problem,
            String discrepancy,
            String event,
            String askedBy,
            String askedByName,
            Instant askedAt,
            String state,
            String decidedBy,
            String decidedByName,
            Instant decidedAt,
            String decisionEvent) {}

    /** A code, and one it is or was cut from that an exception was asked for. */
    record Kin(String of, String code) {}

    /**
     * Which exceptions.
     *
     * @param after where the page before ended; null for the first page
     */
    record Filter(String state, String code, String askedBy, Mark after) {}

    Optional<Row> byId(UUID id) {
        return rows(entities.createNativeQuery(BY_ID, Row.class).setParameter("id", id), Row.class).stream()
                .findFirst();
    }

    List<Row> list(Filter filter, int most) {
        return rows(
                entities.createNativeQuery(LIST, Row.class)
                        .setParameter("state", filter.state())
                        .setParameter("code", filter.code())
                        .setParameter("askedBy", filter.askedBy())
                        .setParameter(
                                "after",
                                filter.after() == null ? null : filter.after().value())
                        .setParameter(
                                "afterId",
                                filter.after() == null ? null : filter.after().id())
                        .setParameter("most", most),
                Row.class);
    }

    List<Row> ofCodes(Collection<String> codes) {
        return rows(
                entities.createNativeQuery(OF_CODES, Row.class).setParameter("codes", codes.toArray(String[]::new)),
                Row.class);
    }

    List<Kin> lineage(Collection<String> codes) {
        return rows(
                entities.createNativeQuery(LINEAGE, Kin.class).setParameter("codes", codes.toArray(String[]::new)),
                Kin.class);
    }

    @SuppressWarnings("unchecked")
    List<String> ofAnimal(String kit) {
        return entities.createNativeQuery(OF_ANIMAL).setParameter("kit", kit).getResultList();
    }

    boolean isSpecimen(String code) {
        return (Boolean) entities.createNativeQuery(IS_SPECIMEN)
                .setParameter("code", code)
                .getSingleResult();
    }

    boolean isReceived(String code) {
        return (Boolean) entities.createNativeQuery(IS_RECEIVED)
                .setParameter("code", code)
                .getSingleResult();
    }

    /** The code that a discrepancy is about. */
    @SuppressWarnings("unchecked")
    Optional<String> codeOfDiscrepancy(UUID id) {
        return ((List<String>) entities.createNativeQuery(DISCREPANCY)
                        .setParameter("id", id)
                        .getResultList())
                .stream().findFirst();
    }

    void ask(UUID id, String code, LabelProblem problem, UUID discrepancy, UUID event, String actor, Instant now) {
        entities.createNativeQuery(ASK)
                .setParameter("id", id)
                .setParameter("code", code)
                .setParameter("problem", problem.name())
                .setParameter("discrepancy", discrepancy == null ? null : discrepancy.toString())
                .setParameter("event", event)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
    }

    void decide(UUID id, String askedBy, boolean granted, UUID event, String actor, Instant now) {
        entities.createNativeQuery(DECIDE)
                .setParameter("id", id)
                .setParameter("askedBy", askedBy)
                .setParameter("granted", granted)
                .setParameter("event", event)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
    }

    @SuppressWarnings("unchecked")
    private static <T> List<T> rows(Query query, Class<T> row) {
        return (List<T>) query.getResultList();
    }
}
