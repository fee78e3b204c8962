package org.dentary.result.feedback;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.dentary.result.FindingReason;

/** Counts reported specimens of animals whose outcome is released: read, or unsuitable for a reason of tissue. */
@ApplicationScoped
class FeedbackQueries {
    private static final String[] TISSUE_REASONS = Arrays.stream(FindingReason.values())
            .filter(FindingReason::isOfTissue)
            .map(Enum::name)
            .toArray(String[]::new);

    /** A specimen that was read in the end is not unsuitable, whatever came before. */
    private static final String REPORTED = """
            with reported as (
              select s.code, n.kit, n.station, t.time_zone, s.collected_by, s.collected_at, s.tissue, s.side, s.preservation,
                     s.condition,
                     (select (min(p.since) at time zone t.time_zone)::date - (s.collected_at at time zone t.time_zone)::date
                        from specimen_preservation p where p.code = s.code and p.preservation = 'FORMALIN') as fixed_days,
                     bool_or(f.finding in ('NOT_DETECTED', 'DETECTED', 'SUSPECT', 'INCONCLUSIVE')) as was_read,
                     max(f.reason) filter (where f.finding = 'UNSUITABLE' and f.reason = any(:reasons)) as reason,
                     max(f.reported_on) as reported_on
                from finding f join finding_specimen fs on fs.finding = f.id join specimen s on s.code = fs.code
                join label b on b.code = s.code join animal n on n.kit = b.kit_bound join station t on t.code = n.station
                join line l on l.kit = n.kit and l.disease = f.disease and l.closed_at is null
                 and l.exclusion in ('', 'DUPLICATE') and l.outcome <> 'PENDING'
               where f.status in ('FINAL', 'CORRECTED') and f.stage <> 'ADJUNCT'
                 and not exists (select 1 from finding c where c.corrects = f.id)
                 and (:season = '' or l.season = :season) and (:person = '' or s.collected_by = :person)
               group by s.code, n.kit, n.station, t.time_zone)
            """;

    private static final String RATES = """
            select %s as grouped, count(*) filter (where not r.was_read) as unsuitable, count(*) as reported
              from reported r where r.was_read or r.reason is not null group by 1 order by 1
            """;
    private static final String UNSUITABLE = """
            select r.code, r.kit, r.station, (r.collected_at at time zone r.time_zone)::date as taken_on, r.collected_by,
                   r.tissue, r.side, r.preservation, r.condition, r.reason, r.reported_on
              from reported r where not r.was_read and r.reason is not null
               and (cast(:day as date) is null or r.reported_on < :day or r.reported_on = :day and r.code > :code)
             order by r.reported_on desc, r.code limit cast(:most as int)
            """;

    private final EntityManager entities;

    FeedbackQueries(EntityManager entities) {
        this.entities = entities;
    }

    record Rate(String grouped, Long unsuitable, Long reported) {}

    /** One specimen that could not be read. */
    public record Unsuitable(
            String code,
            String kit,
            String station,
            LocalDate takenOn,
            String takenBy,
            String tissue,
            String side,
            String preservation,
            String condition,
            String reason,
            LocalDate reportedOn) {}

    @SuppressWarnings("unchecked")
    List<Rate> rates(Grouping by, String season, String person) {
        return query(REPORTED + RATES.formatted(by.expression()), Rate.class, season, person)
                .getResultList();
    }

    /** Where a page of them ended. */
    record After(LocalDate day, String code) {
        static final After NOTHING = new After(null, null);
    }

    /** Of {@link Unsuitable}s, newest report first; all of them where {@code most} is null. */
    Query unsuitable(String season, String person, After after, Integer most) {
        return query(REPORTED + UNSUITABLE, Unsuitable.class, season, person)
                .setParameter("day", after.day())
                .setParameter("code", after.code())
                .setParameter("most", most);
    }

    private Query query(String sql, Class<?> row, String season, String person) {
        return entities.createNativeQuery(sql, row)
                .setParameter("reasons", TISSUE_REASONS)
                .setParameter("season", season)
                .setParameter("person", person);
    }
}
