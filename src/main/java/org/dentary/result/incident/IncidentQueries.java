package org.dentary.result.incident;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/** Reads and writes incidents. */
@ApplicationScoped
class IncidentQueries {
    private static final String CANDIDATES = """
            select l.kit, l.disease, l.unit, coalesce(l.season, '') as season, coalesce(l.region, '') as region,
                   (select i.id from incident i
                     where i.disease = l.disease and i.unit is not distinct from l.unit and i.state = 'OPEN') as open
              from unnest(cast(:kits as text[]), cast(:diseases as text[])) as s(kit, disease)
              join line l on l.kit = s.kit and l.disease = s.disease and l.closed_at is null
             where l.exclusion = ''
               and not exists (select 1 from line o where o.unit = l.unit and o.disease = l.disease and o.kit <> l.kit
                                and o.closed_at is null and o.outcome = 'DETECTED')
               and not exists (select 1 from incident i
                                where i.disease = l.disease and i.closed_as = 'CONFIRMED'
                                  and (i.unit = l.unit
                                       or l.unit is null and exists (select 1 from incident_animal a
                                                                      where a.incident = i.id and a.kit = l.kit)))
             order by l.kit, l.disease
            """;
    private static final String OPEN = """
            insert into incident (id, disease, unit, season, opened_at) values (:id, :disease, cast(:unit as text), nullif(:season, ''), :now)
            on conflict (disease, coalesce(unit, '')) where state = 'OPEN' do nothing
            """;
    private static final String STEPS = """
            insert into incident_step (id, incident, kind, position)
            select :id || '/' || k.kind, cast(:id as uuid), k.kind, k.position
              from unnest(cast(:kinds as text[])) with ordinality as k(kind, position)
            """;
    private static final String TELLINGS = """
            insert into incident_telling (id, incident, position, whom)
            select :id || '/' || w.position, cast(:id as uuid), w.position, w.whom
              from unnest(cast(:whom as text[])) with ordinality as w(whom, position)
            """;
    private static final String JOIN = """
            insert into incident_animal (incident, kit, at)
            select i.id, :kit, :now from incident i
             where i.disease = :disease and i.unit is not distinct from cast(:unit as text) and i.state = 'OPEN'
            on conflict do nothing
            """;
    /** The unit was found: unless animals of another one, or of none, are in it too, the incident is that unit's. */
    private static final String PLACE = """
            update incident i set unit = :unit, version = version + 1
             where i.disease = :disease and i.unit is null and i.state = 'OPEN'
               and exists (select 1 from incident_animal a where a.incident = i.id and a.kit = :kit)
               and not exists (select 1 from incident_animal a
                                 join line l on l.kit = a.kit and l.disease = i.disease and l.closed_at is null
                                where a.incident = i.id and l.unit is distinct from :unit)
            """;

    private static final String HEADS = """
            select i.id::text, i.disease, d.name as disease_name, coalesce(i.unit, 'UNKNOWN') as unit,
                   coalesce(u.name, 'unit unknown') as unit_name, coalesce(i.season, '') as season,
                   i.state, i.opened_at, i.closed_as, i.closing_note, i.closed_by, i.closed_at,
                   (select count(*) from incident_step s where s.incident = i.id and s.state <> 'OPEN') as settled,
                   (select count(*) from incident_step s where s.incident = i.id) as steps,
                   coalesce((select st.time_zone from incident_animal a join animal n on n.kit = a.kit
                              join station st on st.code = n.station where a.incident = i.id order by a.at, a.kit limit 1),
                            'UTC') as time_zone, i.version
              from incident i join disease d on d.code = i.disease left join management_unit u on u.code = i.unit
              left join incident p on p.id = cast(:after as uuid)
             where (:id = '' or i.id::text = :id)
               and (p.id is null or i.state < p.state or i.state = p.state
                    and (i.opened_at < p.opened_at or i.opened_at = p.opened_at and i.id > p.id))
             order by i.state desc, i.opened_at desc, i.id
             limit :most
            """;
    private static final String TABLE = """
            select i.id::text, i.disease, coalesce(i.unit, 'UNKNOWN'), i.state, i.opened_at, s.kind, s.owner, s.due_on, s.state as step_state, s.note
              from incident i join incident_step s on s.incident = i.id
             order by i.state desc, i.opened_at desc, i.id, s.position
            """;
    private static final String ANIMALS = """
            select a.kit, l.derived_outcome, l.outcome, coalesce(e.explanation, '') as explanation, l.station, l.died_on,
                   coalesce(u.name, 'unit unknown') as unit_name
              from incident_animal a join incident i on i.id = a.incident
              join line l on l.kit = a.kit and l.disease = i.disease and l.closed_at is null
              left join outcome_explanation e on e.kit = a.kit and e.disease = i.disease
              left join management_unit u on u.code = l.unit
             where a.incident = :id order by a.at, a.kit
            """;
    private static final String STEPS_OF = """
            select kind, owner, due_on, state, note, version from incident_step where incident = :id order by position
            """;
    private static final String TELLINGS_OF = """
            select position, whom, told_at, told_by, note from incident_telling where incident = :id order by position
            """;
    /** The day is that of the station's clock on which tissue was taken. */
    private static final String SAME_TABLE = """
            with handled as (
              select distinct n.kit, n.station, (s.collected_at at time zone t.time_zone)::date as sampled_on, s.collected_by
                from specimen s join label b on b.code = s.code join animal n on n.kit = b.kit_bound
                join station t on t.code = n.station
               where s.parent is null and n.station in (select m.station from incident_animal x join animal m on m.kit = x.kit
                                                         where x.incident = :id))
            select h.kit, h.station, h.sampled_on, h.collected_by from handled h
             where not exists (select 1 from incident_animal a where a.incident = :id and a.kit = h.kit)
               and (h.station, h.sampled_on) in (select g.station, g.sampled_on from handled g
                      join incident_animal a on a.kit = g.kit where a.incident = :id)
             order by h.sampled_on, h.station, h.kit
            """;

    private static final String CHANGES = """
            select h.at, h.actor, h.old ->> 'kind' as kind,
                   concat_ws(', ', h.old ->> 'state', h.old ->> 'owner', h.old ->> 'due_on', h.old ->> 'note') as was
              from history h where h.table_name = 'incident_step' and h.key like :id || '/%' order by h.id desc limit 200
            """;
    private static final String SETTLE = """
            update incident_step set owner = :owner, due_on = cast(:due as date), state = :state, note = cast(:note as text),
                   version = version + 1 where id = :id and version = :version
            """;
    private static final String TELL = """
            update incident_telling set told_at = :at, told_by = :by, note = cast(:note as text)
             where incident = :id and position = :position and told_at is null
            """;
    private static final String CLOSE = """
            update incident set state = 'CLOSED', closed_as = :as, closing_note = :note, closed_by = :by, closed_at = :now,
                   version = version + 1 where id = :id and state = 'OPEN'
            """;

    private final EntityManager entities;

    IncidentQueries(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * A suspicion in a unit where the disease was not confirmed before, or of an animal whose unit is unknown, which may be
     * any; {@code open} is the incident there, or null.
     */
    record Candidate(String kit, String disease, String unit, String season, String region, UUID open) {}

    @SuppressWarnings("unchecked")
    List<Candidate> candidates(List<String> kits, List<String> diseases) {
        return entities.createNativeQuery(CANDIDATES, Candidate.class)
                .setParameter("kits", kits.toArray(String[]::new))
                .setParameter("diseases", diseases.toArray(String[]::new))
                .getResultList();
    }

    /** Opens an incident with its steps unless another transaction was first. */
    void open(UUID id, Candidate first, List<String> kinds, List<String> whom, Instant now) {
        int opened = entities.createNativeQuery(OPEN)
                .setParameter("id", id)
                .setParameter("disease", first.disease())
                .setParameter("unit", first.unit())
                .setParameter("season", first.season())
                .setParameter("now", now)
                .executeUpdate();
        if (opened == 1) {
            entities.createNativeQuery(STEPS)
                    .setParameter("id", id.toString())
                    .setParameter("kinds", kinds.toArray(String[]::new))
                    .executeUpdate();
            entities.createNativeQuery(TELLINGS)
                    .setParameter("id", id.toString())
                    .setParameter("whom", whom.toArray(String[]::new))
                    .executeUpdate();
        }
    }

    /** Whether the animal's incident without a unit became that of its unit. */
    boolean place(Candidate animal) {
        return entities.createNativeQuery(PLACE)
                        .setParameter("kit", animal.kit())
                        .setParameter("disease", animal.disease())
                        .setParameter("unit", animal.unit())
                        .executeUpdate()
                > 0;
    }

    void join(Candidate animal, Instant now) {
        entities.createNativeQuery(JOIN)
                .setParameter("kit", animal.kit())
                .setParameter("disease", animal.disease())
                .setParameter("unit", animal.unit())
                .setParameter("now", now)
                .executeUpdate();
    }

    /** A step with its incident, as a row of the file. */
    record TableRow(
            String incident,
            String disease,
            String unit,
            String incidentState,
            Instant openedAt,
            String step,
            String owner,
            LocalDate dueOn,
            String state,
            String note) {}

    /** Incidents, open ones first, or the one of that id; {@code after} is the id of the last one told, or null. */
    @SuppressWarnings("unchecked")
    List<IncidentView.Head> heads(String id, UUID after, int most) {
        return entities.createNativeQuery(HEADS, IncidentView.Head.class)
                .setParameter("id", id)
                .setParameter("after", after == null ? null : after.toString())
                .setParameter("most", most)
                .getResultList();
    }

    /** Every step of every incident, open incidents first, in one statement: {@link TableRow}s. */
    Query table() {
        return entities.createNativeQuery(TABLE, TableRow.class);
    }

    List<IncidentView.Animal> animals(UUID id) {
        return rows(ANIMALS, IncidentView.Animal.class, id);
    }

    List<IncidentView.Step> steps(UUID id) {
        return rows(STEPS_OF, IncidentView.Step.class, id);
    }

    List<IncidentView.Telling> tellings(UUID id) {
        return rows(TELLINGS_OF, IncidentView.Telling.class, id);
    }

    List<IncidentView.SameTable> sameTable(UUID id) {
        return rows(SAME_TABLE, IncidentView.SameTable.class, id);
    }

    List<IncidentView.Change> changes(UUID id) {
        return rows(CHANGES, IncidentView.Change.class, id.toString());
    }

    int settle(UUID id, IncidentStep kind, SettleStep step, int version) {
        return entities.createNativeQuery(SETTLE)
                .setParameter("id", id + "/" + kind)
                .setParameter("owner", step.owner())
                .setParameter("due", step.dueOn() == null ? null : step.dueOn().toString())
                .setParameter("state", step.state().name())
                .setParameter("note", step.note())
                .setParameter("version", version)
                .executeUpdate();
    }

    int tell(UUID id, int position, Instant at, String by, String note) {
        return entities.createNativeQuery(TELL)
                .setParameter("id", id)
                .setParameter("position", position)
                .setParameter("at", at)
                .setParameter("by", by)
                .setParameter("note", note)
                .executeUpdate();
    }

    int close(UUID id, String as, String note, String by, Instant now) {
        return entities.createNativeQuery(CLOSE)
                .setParameter("id", id)
                .setParameter("as", as)
                .setParameter("note", note)
                .setParameter("by", by)
                .setParameter("now", now)
                .executeUpdate();
    }

    @SuppressWarnings("unchecked")
    private <T> List<T> rows(String sql, Class<T> row, Object id) {
        return entities.createNativeQuery(sql, row).setParameter("id", id).getResultList();
    }
}
