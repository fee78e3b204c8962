package org.dentary.prevalence.pictures;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.dentary.prevalence.question.ReportQuestion;

/**
 * Counts by week and by laboratory. Tested and reported are told of animals whose released outcome is more than pending
 * only: from the number reported and not released nobody can tell that something waits for release.
 */
@ApplicationScoped
class PictureQueries {
    private static final String KNOWN = """
            with known as (
              select l.kit, l.died_on, l.outcome %s %s and l.exclusion = '' and l.has_specimen),
            told as (
              select k.kit, min(f.tested_on) as tested_on, max(f.reported_on) as reported_on
                from known k
                join label b on b.kit_bound = k.kit
                join finding_specimen s on s.code = b.code
                join finding f on f.id = s.finding and f.disease = :disease and f.status in ('FINAL', 'CORRECTED')
                 and f.recorded_at <= :at
               where k.outcome not in ('PENDING', 'NOT_TESTED')
               group by k.kit)
            """;
    private static final String WEEKS = KNOWN + """
            select week, cast(sum(taken) as int) as taken, cast(sum(tested) as int) as tested,
                   cast(sum(reported) as int) as reported
              from (select cast(date_trunc('week', died_on) as date) as week, 1 as taken, 0 as tested, 0 as reported
                      from known where died_on is not null
                    union all
                    select cast(date_trunc('week', tested_on) as date), 0, 1, 0 from told where tested_on is not null
                    union all
                    select cast(date_trunc('week', reported_on) as date), 0, 0, 1 from told) as happened
             group by week order by week
            """;
    private static final String TURNAROUND = KNOWN + """
            select y.name as laboratory, y.turnaround_days as promised, days, cast(count(*) as int) as specimens
              from (select u.laboratory, p.code,
                           max(f.reported_on) - min(cast(coalesce(p.received_at, u.received_at, u.dispatched_at)
                                                         at time zone :zone as date)) as days
                      from told t
                      join label b on b.kit_bound = t.kit
                      join submission_specimen p on p.code = b.code
                      join submission u on u.id = p.submission and u.dispatched_at is not null
                      join finding_specimen s on s.code = p.code
                      join finding f on f.id = s.finding and f.laboratory = u.laboratory and f.disease = :disease
                       and f.status in ('FINAL', 'CORRECTED')
                       and f.recorded_at <= :at
                     group by u.laboratory, p.code) as waited
              join laboratory y on y.code = waited.laboratory
             where days >= 0
             group by y.name, y.position, y.turnaround_days, days order by y.position, days
            """;

    private final EntityManager entities;

    PictureQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** How many animals died, were first tested and last reported in the week that begins on that Monday. */
    record Week(LocalDate week, Integer taken, Integer tested, Integer reported) {}

    /** How many specimens a laboratory reported after so many days; {@code promised} may be null. */
    record Waited(String laboratory, Integer promised, Integer days, Integer specimens) {}

    @SuppressWarnings("unchecked")
    List<Week> weeks(ReportQuestion question, Instant at) {
        return bound(WEEKS, Week.class, question, at).getResultList();
    }

    /**
     * Days from receipt (dispatch where receipt was not told) to the last report, by laboratory.
     *
     * @param zone whose days they are
     */
    @SuppressWarnings("unchecked")
    List<Waited> turnaround(ReportQuestion question, Instant at, String zone) {
        return bound(TURNAROUND, Waited.class, question, at)
                .setParameter("zone", zone)
                .getResultList();
    }

    private Query bound(String sql, Class<?> row, ReportQuestion question, Instant at) {
        Query query = entities.createNativeQuery(
                sql.formatted(question.lines().from(), question.filter().sql()), row);
        question.lines().bind(query);
        question.filter().bind(query);
        return query.setParameter("at", at);
    }
}
