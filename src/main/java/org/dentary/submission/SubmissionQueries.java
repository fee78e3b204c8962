package org.dentary.submission;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;

/** Reads submissions and what decides about packing. */
@ApplicationScoped
class SubmissionQueries {
    /** Labels of animals with a withheld finding, read once a query: the planner takes them for many and would read them by row. */
    private static final String WITHHELD = """
            withheld as materialized (
              select l.code, e.since from embargo e join label l on l.kit_bound = e.kit where not :knowing)
            """;

    /** Whether a row x of a submission b may be seen. */
    private static final String SEEN = """
            (not exists (select 1 from withheld h
                          where h.code = x.code and (b.purpose = 'CONFIRMATORY' or x.recorded_at >= h.since))
               and (:everywhere or exists (select 1 from label sl join animal sa on sa.kit = sl.kit_bound
                                            where sl.code = x.code and sa.station = any(:stations))))
            """;

    private static final String SELECT = "with " + WITHHELD + """
            select b.id::text, b.number, b.laboratory, b.purpose, b.state, b.carrier, b.waybill, b.checklist,
                   b.dispatched_at, b.dispatched_by, b.received_at, b.opened_by, b.opened_at, b.version,
                   c.packed, c.received, c.missing
              from submission b
             cross join lateral (
                   select count(*) as packed,
                          count(*) filter (where x.receipt in ('RECEIVED', 'DAMAGED')) as received,
                          count(*) filter (where x.receipt = 'SHORT') as missing
                     from submission_specimen x where x.submission = b.id and """ + SEEN + """
                   ) c
             where (:knowing and :everywhere or c.packed > 0
                    or :everywhere and b.purpose <> 'CONFIRMATORY'
                       and not exists (select 1 from submission_specimen r where r.submission = b.id))
            """;
    private static final String PACKED = "with " + WITHHELD + """
            select x.code, x.box, s.tissue, s.side, s.preservation,
                   (s.collected_at at time zone coalesce(t.time_zone, 'UTC'))::date, a.species,
                   coalesce((select n.age_class from line n where n.kit = a.kit and n.closed_at is null order by n.disease limit 1), 'UNKNOWN'),
                   coalesce(a.sex, 'UNKNOWN'), coalesce(a.unit, 'UNKNOWN'), x.packed_at, x.packed_by, x.override_reason, x.receipt, x.received_at,
                   i.code is not null as identity_exception
              from submission b join submission_specimen x on x.submission = b.id
              join specimen s on s.code = x.code join label l on l.code = s.code
              left join animal a on a.kit = l.kit_bound left join station t on t.code = a.station
              left join (select distinct g.code from specimen_standing g where g.standing = 'GRANTED') i on i.code = x.code
             where b.id = :id and """ + SEEN + """
             order by x.box nulls first, x.packed_at, x.code
            """;
    private static final String FACTS = """
            select s.code, l.kit_bound, s.tissue, s.side, s.preservation, s.condition,
                   (s.collected_at at time zone coalesce(t.time_zone, 'UTC'))::date,
                   (coalesce((select max(p.since) from specimen_preservation p where p.code = s.code), s.collected_at)
                     at time zone coalesce(t.time_zone, 'UTC'))::date,
                   coalesce((select n.age_class from line n where n.kit = a.kit and n.closed_at is null order by n.disease limit 1), 'UNKNOWN'),
                   coalesce(a.sex, 'UNKNOWN'), s.archived, coalesce(a.not_attributable, false),
                   (select min(o.number) from submission_specimen x join submission o on o.id = x.submission
                     where x.code = s.code and o.id <> :id and o.state <> 'RECEIVED'
                       and coalesce(x.receipt, '') <> 'RECALLED'),
                   exists (select 1 from submission_specimen x where x.code = s.code and x.submission = :id)
              from specimen s join label l on l.code = s.code
              left join animal a on a.kit = l.kit_bound left join station t on t.code = a.station
             where s.code = :code
            """;
    private static final String OVER = "select given from submission_over where submission = :id order by given";
    private static final String ROUTES = """
            select x.code, string_agg(distinct b.laboratory, ' ') from submission_specimen x
              join submission b on b.id = x.submission where x.code in (:codes) group by x.code
            """;
    private static final String WAITING = """
            select s.code, l.kit_bound, s.tissue, s.side, s.preservation,
                   (s.collected_at at time zone coalesce(t.time_zone, 'UTC'))::date as collected_on,
                   (cast(:today as date) - (s.collected_at at time zone coalesce(t.time_zone, 'UTC'))::date) as days,
                   coalesce(a.station, ''), coalesce(h.custodian, ''),
                   coalesce(p.name, z.name, o.name, y.name, h.custodian, '') as custodian_name
              from specimen s join label l on l.code = s.code
              left join animal a on a.kit = l.kit_bound left join station t on t.code = a.station
              left join custody_head h on h.code = s.code
              left join person p on p.code = h.custodian and h.custodian_kind = 'PERSON'
              left join store z on z.code = h.custodian and h.custodian_kind = 'STORE'
              left join party o on o.code = h.custodian and h.custodian_kind = 'PARTY'
              left join laboratory y on y.code = h.custodian and h.custodian_kind = 'PARTY'
              left join embargo e on e.kit = l.kit_bound and not :knowing
             where not s.archived and coalesce(a.entered_in_error, false) = false
               and (e.since is null or s.recorded_at < e.since)
               and (:everywhere or a.station = any(:stations))
               and not exists (select 1 from submission_specimen x where x.code = s.code
                                  and coalesce(x.receipt, '') <> 'RECALLED' and (e.since is null or x.recorded_at < e.since))
             order by s.collected_at, s.code
            """;
    private static final String OVERDUE = "with " + WITHHELD + """
            , reported as (
              select distinct f.laboratory, v.code
                from finding f join finding_specimen fs on fs.finding = f.id join specimen t on t.code = fs.code
               cross join lateral (values (t.code), (t.parent)) v(code)
               where f.status <> 'PRELIMINARY' and v.code is not null)
            select b.laboratory, b.number, b.id::text, x.code, b.dispatched_at,
                   (cast(:now as timestamptz)::date - b.dispatched_at::date) as days, y.turnaround_days
              from submission b join submission_specimen x on x.submission = b.id join laboratory y on y.code = b.laboratory
              left join withheld w on w.code = x.code
             where b.state in ('DISPATCHED', 'RECEIVED') and y.turnaround_days is not null
               and coalesce(x.receipt, '') not in ('SHORT', 'RECALLED')
               and b.dispatched_at + make_interval(days => y.turnaround_days) < :now
               and """ + SEEN + """
               and not exists (select 1 from reported r
                                where r.laboratory = b.laboratory and r.code = x.code and w.since is null)
             order by b.dispatched_at, b.number, x.code
            """;
    private static final String TURNAROUND = "with " + WITHHELD + """
            select b.laboratory, y.turnaround_days, count(*),
                   percentile_cont(0.5) within group (order by (f.reported_on - b.dispatched_at::date)),
                   percentile_cont(0.9) within group (order by (f.reported_on - b.dispatched_at::date))
              from finding f join finding_specimen fs on fs.finding = f.id
              join submission_specimen x on x.code = fs.code join submission b on b.id = x.submission and b.laboratory = f.laboratory
              join laboratory y on y.code = b.laboratory
             where f.status = 'FINAL' and b.dispatched_at is not null
               and not exists (select 1 from withheld h where h.code = x.code)
             group by b.laboratory, y.turnaround_days order by b.laboratory
            """;

    private static final String SENT_SINCE = """
            select distinct x.code from submission_specimen x join submission b on b.id = x.submission
             where x.submission <> :id and x.code = any (cast(:codes as text[])) and x.receipt is distinct from 'RECALLED'
               and x.recorded_at > (select max(y.recorded_at) from submission_specimen y where y.submission = :id and y.code = x.code)
             order by x.code
            """;

    private final EntityManager entities;

    SubmissionQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A submission's own row with its counts. */
    record Head(
            String id,
            Long number,
            String laboratory,
            String purpose,
            String state,
            String carrier,
            String waybill,
            String shipper,
            Instant dispatchedAt,
            String dispatchedBy,
            Instant receivedAt,
            String openedBy,
            Instant openedAt,
            Integer version,
            Long packed,
            Long received,
            Long missing) {}

    /** A specimen collected and never put into a submission. */
    public record Waiting(
            String code,
            String kit,
            String tissue,
            String side,
            String preservation,
            java.time.LocalDate collectedOn,
            Integer days,
            String station,
            String custodian,
            String custodianName) {}

    /** A specimen sent and not reported within the promised days. */
    public record Overdue(
            String laboratory,
            Long number,
            String submission,
            String code,
            Instant dispatchedAt,
            Integer days,
            Integer promisedDays) {}

    /** Days from dispatch to the final report, from the service's own data. */
    public record Turnaround(String laboratory, Integer promisedDays, Long findings, Double median, Double ninetieth) {}

    @SuppressWarnings("unchecked")
    Optional<Head> find(UUID id, Sight sight) {
        return ((List<Head>) seen(SELECT + " and b.id = :id", Head.class, sight)
                        .setParameter("id", id)
                        .getResultList())
                .stream().findFirst();
    }

    /**
     * Newest first.
     *
     * @param states none for all
     * @param laboratory null for all
     * @param before only those with a smaller number, null for no bound
     */
    @SuppressWarnings("unchecked")
    List<Head> list(List<String> states, String laboratory, Long before, int most, Sight sight) {
        return seen(
                        SELECT + " and (cardinality(:states) = 0 or b.state = any(:states))"
                                + " and (cast(:laboratory as text) is null or b.laboratory = :laboratory)"
                                + " and (cast(:before as bigint) is null or b.number < :before) order by b.number desc",
                        Head.class,
                        sight)
                .setParameter("states", states.toArray(String[]::new))
                .setParameter("laboratory", laboratory)
                .setParameter("before", before)
                .setMaxResults(most)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<PackedView> packed(UUID id, Sight sight) {
        return seen(PACKED, PackedView.class, sight).setParameter("id", id).getResultList();
    }

    @SuppressWarnings("unchecked")
    List<String> over(UUID id) {
        return entities.createNativeQuery(OVER).setParameter("id", id).getResultList();
    }

    @SuppressWarnings("unchecked")
    Optional<PackingFacts> facts(UUID submission, String code) {
        return ((List<PackingFacts>) entities.createNativeQuery(FACTS, PackingFacts.class)
                        .setParameter("id", submission)
                        .setParameter("code", code)
                        .getResultList())
                .stream().findFirst();
    }

    @SuppressWarnings("unchecked")
    Map<String, List<String>> routes(Collection<String> codes) {
        Map<String, List<String>> routes = new TreeMap<>();
        ((List<Object[]>) entities.createNativeQuery(ROUTES)
                        .setParameter("codes", codes)
                        .getResultList())
                .forEach(row -> routes.put((String) row[0], List.of(((String) row[1]).split(" "))));
        return routes;
    }

    @SuppressWarnings("unchecked")
    List<Waiting> waiting(java.time.LocalDate today, int most, Sight sight) {
        return seen(WAITING, Waiting.class, sight)
                .setParameter("today", today)
                .setMaxResults(most)
                .getResultList();
    }

    long countWaiting(java.time.LocalDate today, Sight sight) {
        return ((Number) seen(count(WAITING), null, sight)
                        .setParameter("today", today)
                        .getSingleResult())
                .longValue();
    }

    long countOverdue(Instant now, Sight sight) {
        return ((Number) seen(count(OVERDUE), null, sight)
                        .setParameter("now", now)
                        .getSingleResult())
                .longValue();
    }

    private static String count(String rows) {
        return "select count(*) from (" + rows + ") counted";
    }

    @SuppressWarnings("unchecked")
    List<Overdue> overdue(Instant now, int most, Sight sight) {
        return seen(OVERDUE, Overdue.class, sight)
                .setParameter("now", now)
                .setMaxResults(most)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<Turnaround> turnaround(Sight sight) {
        return entities.createNativeQuery(TURNAROUND, Turnaround.class)
                .setParameter("knowing", sight.knowing())
                .getResultList();
    }

    private Query seen(String sql, Class<?> row, Sight sight) {
        return (row == null ? entities.createNativeQuery(sql) : entities.createNativeQuery(sql, row))
                .setParameter("knowing", sight.knowing())
                .setParameter("everywhere", sight.everywhere())
                .setParameter("stations", sight.stations().toArray(String[]::new));
    }

    /** Those of the codes that were packed into another submission since and did not come back from it. */
    @SuppressWarnings("unchecked")
    List<String> packedSince(UUID id, Collection<String> codes) {
        return entities.createNativeQuery(SENT_SINCE)
                .setParameter("id", id)
                .setParameter("codes", codes.toArray(String[]::new))
                .getResultList();
    }
}
