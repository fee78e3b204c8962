package org.dentary.submission.outstanding;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.dentary.submission.Sight;

/** Reads what is outstanding: collected and not sent, sent and not reported; and how long laboratories take. */
@ApplicationScoped
public class OutstandingQueries {
    /**
     * What was collected and is in no submission, found before anything is told of it: most of what there is was sent. The
     * offset keeps the planner, which takes the unsent for many, from reading all labels and animals for them.
     */
    private static final String UNSENT = "with " + Sight.WITHHELD + """
            , sent as materialized (
              select x.code from submission_specimen x """ + Sight.ARRIVAL + """
               where coalesce(arrival.receipt, '') <> 'RECALLED' and (since.code is null or x.recorded_at < since.since)),
            unsent as materialized (
              select s.code, s.tissue, s.side, s.preservation, s.collected_at
                from specimen s left join withheld e on e.code = s.code
               where not s.archived and (e.since is null or s.recorded_at < e.since)
                 and not exists (select 1 from sent g where g.code = s.code)),
            kept as materialized (
              select u.*, w.kit_bound, w.station,
                     (u.collected_at at time zone coalesce(t.time_zone, 'UTC'))::date as collected_on
                from unsent u
               cross join lateral (
                     select l.kit_bound, a.station, a.entered_in_error
                       from label l left join animal a on a.kit = l.kit_bound where l.code = u.code offset 0) w
                left join station t on t.code = w.station
               where coalesce(w.entered_in_error, false) = false and (:everywhere or w.station = any(:stations)))
            """;

    private static final String WAITING = UNSENT + """
            , first as materialized (
              select k.* from kept k
               where (cast(:after as text) is null
                      or (k.collected_at, k.code) > (select c.collected_at, c.code from specimen c where c.code = :after))
               order by k.collected_at, k.code limit cast(:most as int))
            select k.code, k.kit_bound, k.tissue, k.side, k.preservation, k.collected_on,
                   (cast(:today as date) - k.collected_on) as days, coalesce(k.station, ''), coalesce(h.custodian, ''),
                   coalesce(p.name, z.name, o.name, y.name, h.custodian, '') as custodian_name,
                   (select count(*) from kept) as total
              from first k left join custody_head h on h.code = k.code
              left join person p on p.code = h.custodian and h.custodian_kind = 'PERSON'
              left join store z on z.code = h.custodian and h.custodian_kind = 'STORE'
              left join party o on o.code = h.custodian and h.custodian_kind = 'PARTY'
              left join laboratory y on y.code = h.custodian and h.custodian_kind = 'PARTY'
             order by k.collected_at, k.code
            """;
    private static final String UNREPORTED = "with " + Sight.WITHHELD + """
            , reported as materialized (
              select r.laboratory, r.code, max(r.reported_on) as last_on
                from (select f.laboratory, fs.code, f.reported_on
                        from finding f join finding_specimen fs on fs.finding = f.id where f.status <> 'PRELIMINARY'
                      union all
                      select f.laboratory, t.parent, f.reported_on
                        from specimen t join finding_specimen fs on fs.code = t.code join finding f on f.id = fs.finding
                       where t.parent is not null and f.status <> 'PRELIMINARY') r
               group by 1, 2),
            due as materialized (
              select b.laboratory, b.number, b.id, x.code, b.dispatched_at, y.turnaround_days
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
                                                           and e.recorded_at < x.recorded_at
                                                           and e.receipt is distinct from 'RECALLED'))))
            """;
    private static final String OVERDUE = UNREPORTED + """
            select d.laboratory, d.number, d.id::text, d.code, d.dispatched_at,
                   (cast(:now as timestamptz)::date - d.dispatched_at::date) as days, d.turnaround_days,
                   (select count(*) from due) as total
              from due d
             where (cast(:afterNumber as bigint) is null
                    or (d.dispatched_at, d.number, d.code)
                       > (select o.dispatched_at, o.number, cast(:afterCode as text) from submission o where o.number = :afterNumber))
             order by d.dispatched_at, d.number, d.code limit cast(:most as int)
            """;
    /** A piece answers for what it was cut from; of several times sent, the last one before the report counts. */
    private static final String TURNAROUND = "with " + Sight.WITHHELD + """
            , tested as (
              select f.id, f.laboratory, f.reported_on, fs.code, fs.code as sent
                from finding f join finding_specimen fs on fs.finding = f.id where f.status = 'FINAL'
              union all
              select f.id, f.laboratory, f.reported_on, fs.code, t.parent
                from specimen t join finding_specimen fs on fs.code = t.code join finding f on f.id = fs.finding
               where t.parent is not null and f.status = 'FINAL'),
            answer as materialized (
              select t.laboratory, t.code,
                     t.reported_on - coalesce(max(b.dispatched_at) filter (where b.dispatched_at::date <= t.reported_on),
                                              max(b.dispatched_at))::date as days
                from tested t join submission_specimen x on x.code = t.sent and x.receipt is distinct from 'RECALLED'
                join submission b on b.id = x.submission and b.laboratory = t.laboratory
               where b.dispatched_at is not null
               group by t.id, t.code, t.laboratory, t.reported_on)
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

    /** The same with how many there are in all, so that a page and its number come of one reading. */
    record WaitingRow(
            String code,
            String kit,
            String tissue,
            String side,
            String preservation,
            LocalDate collectedOn,
            Integer days,
            String station,
            String custodian,
            String custodianName,
            Long total) {
        Waiting row() {
            return new Waiting(
                    code, kit, tissue, side, preservation, collectedOn, days, station, custodian, custodianName);
        }
    }

    /** The same with how many there are in all. */
    record OverdueRow(
            String laboratory,
            Long number,
            String submission,
            String code,
            Instant dispatchedAt,
            Integer days,
            Integer promisedDays,
            Long total) {
        Overdue row() {
            return new Overdue(laboratory, number, submission, code, dispatchedAt, days, promisedDays);
        }
    }

    /** Where a page of what is overdue ended. */
    record After(Long number, String code) {
        static final After NOTHING = new After(null, null);
    }

    /**
     * Of {@link WaitingRow}s, longest first.
     *
     * @param after code of the last one told, or null
     * @param most null for all
     */
    Query waiting(LocalDate today, String after, Integer most, Sight sight) {
        return sight.bind(entities.createNativeQuery(WAITING, WaitingRow.class))
                .setParameter("today", today)
                .setParameter("after", after)
                .setParameter("most", most);
    }

    /** Of {@link OverdueRow}s, longest first; {@code most} is null for all. */
    Query overdue(Instant now, After after, Integer most, Sight sight) {
        return sight.bind(entities.createNativeQuery(OVERDUE, OverdueRow.class))
                .setParameter("now", now)
                .setParameter("afterNumber", after.number())
                .setParameter("afterCode", after.code())
                .setParameter("most", most);
    }

    long countWaiting(Sight sight) {
        return count(sight.bind(entities.createNativeQuery(UNSENT + "select count(*) from kept")));
    }

    long countOverdue(Instant now, Sight sight) {
        return count(sight.bind(entities.createNativeQuery(UNREPORTED + "select count(*) from due"))
                .setParameter("now", now));
    }

    private static long count(Query query) {
        return ((Number) query.getSingleResult()).longValue();
    }

    @SuppressWarnings("unchecked")
    List<Turnaround> turnaround(Sight sight) {
        return entities.createNativeQuery(TURNAROUND, Turnaround.class)
                .setParameter("knowing", sight.knowing())
                .getResultList();
    }
}
