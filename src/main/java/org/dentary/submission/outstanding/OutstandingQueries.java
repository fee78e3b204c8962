package org.dentary.submission.outstanding;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.dentary.submission.Sight;

/** Reads what is outstanding: collected and not sent, sent and not reported; and how long laboratories take. */
@ApplicationScoped
public class OutstandingQueries {
    private static final String WAITING = "with " + Sight.WITHHELD + """
            , sent as materialized (
              select x.code from submission_specimen x """ + Sight.ARRIVAL + """
               where coalesce(arrival.receipt, '') <> 'RECALLED' and (since.code is null or x.recorded_at < since.since))
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
              left join withheld e on e.code = s.code
             where not s.archived and coalesce(a.entered_in_error, false) = false
               and (e.since is null or s.recorded_at < e.since)
               and (:everywhere or a.station = any(:stations))
               and not exists (select 1 from sent g where g.code = s.code)
             order by s.collected_at, s.code
            """;
    private static final String OVERDUE = "with " + Sight.WITHHELD + """
            , reported as (
              select f.laboratory, v.code, max(f.reported_on) as last_on
                from finding f join finding_specimen fs on fs.finding = f.id join specimen t on t.code = fs.code
               cross join lateral (values (t.code), (t.parent)) v(code)
               where f.status <> 'PRELIMINARY' and v.code is not null group by 1, 2)
            select b.laboratory, b.number, b.id::text, x.code, b.dispatched_at,
                   (cast(:now as timestamptz)::date - b.dispatched_at::date) as days, y.turnaround_days
              from submission b join submission_specimen x on x.submission = b.id join laboratory y on y.code = b.laboratory
              left join withheld w on w.code = x.code
            """ + Sight.ARRIVAL + """
             where b.state in ('DISPATCHED', 'RECEIVED') and y.turnaround_days is not null
               and coalesce(arrival.receipt, '') not in ('SHORT', 'RECALLED')
               and b.dispatched_at + make_interval(days => y.turnaround_days) < :now
               and """ + Sight.SEEN + """
               and not exists (select 1 from reported r
                                where r.laboratory = b.laboratory and r.code = x.code and w.since is null
                                  and (r.last_on >= (b.dispatched_at at time zone 'UTC')::date
                                       or not exists (select 1 from submission_specimen e join submission o on o.id = e.submission
                                                       where e.code = x.code and o.laboratory = b.laboratory
                                                         and e.recorded_at < x.recorded_at and e.receipt is distinct from 'RECALLED')))
             order by b.dispatched_at, b.number, x.code
            """;
    private static final String TURNAROUND = "with " + Sight.WITHHELD + """
            , answer as materialized (
              select distinct on (f.id, fs.code) b.laboratory, x.code, f.reported_on - b.dispatched_at::date as days
                from finding f join finding_specimen fs on fs.finding = f.id join specimen t on t.code = fs.code
               cross join lateral (values (t.code), (t.parent)) v(code)
                join submission_specimen x on x.code = v.code and x.receipt is distinct from 'RECALLED'
                join submission b on b.id = x.submission and b.laboratory = f.laboratory
               where f.status = 'FINAL' and b.dispatched_at is not null
               order by f.id, fs.code, b.dispatched_at::date <= f.reported_on desc, b.dispatched_at desc)
            select a.laboratory, y.turnaround_days, count(*),
                   percentile_cont(0.5) within group (order by a.days),
                   percentile_cont(0.9) within group (order by a.days)
              from answer a join laboratory y on y.code = a.laboratory
             where not exists (select 1 from withheld h where h.code = a.code)
             group by a.laboratory, y.turnaround_days order by a.laboratory
            """;

    private final EntityManager entities;

    OutstandingQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A specimen collected and never put into a submission. */
    public record Waiting(
            String code,
            String kit,
            String tissue,
            String side,
            String preservation,
            LocalDate collectedOn,
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
    List<Waiting> waiting(LocalDate today, int most, Sight sight) {
        return sight.bind(entities.createNativeQuery(WAITING, Waiting.class))
                .setParameter("today", today)
                .setMaxResults(most)
                .getResultList();
    }

    long countWaiting(LocalDate today, Sight sight) {
        return ((Number) sight.bind(entities.createNativeQuery(count(WAITING)))
                        .setParameter("today", today)
                        .getSingleResult())
                .longValue();
    }

    long countOverdue(Instant now, Sight sight) {
        return ((Number) sight.bind(entities.createNativeQuery(count(OVERDUE)))
                        .setParameter("now", now)
                        .getSingleResult())
                .longValue();
    }

    private static String count(String rows) {
        return "select count(*) from (" + rows + ") counted";
    }

    @SuppressWarnings("unchecked")
    List<Overdue> overdue(Instant now, int most, Sight sight) {
        return sight.bind(entities.createNativeQuery(OVERDUE, Overdue.class))
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
}
