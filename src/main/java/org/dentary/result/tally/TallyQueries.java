package org.dentary.result.tally;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.LocalDate;
import java.util.List;

/** Counts reported tests; one pass over the findings of a span of days. */
@ApplicationScoped
class TallyQueries {
    /** A preliminary report is left out once any later report of the same item by the same method and stage is there. */
    private static final String REPORTED = """
            with reported as (
              select f.id, f.laboratory, coalesce(f.performing_laboratory, f.laboratory) as performed_by, f.accession,
                     coalesce(f.item, '') as item, f.method, f.stage, f.tested_on, f.reported_on, coalesce(f.run, '') as run,
                     case when f.corrects is not null then 'CORRECTION' when f.status = 'CANCELLED' then 'CANCELLED'
                          when f.finding in ('NOT_TESTED', 'UNSUITABLE', 'INVALID_RUN') then f.finding else 'TEST' end as what,
                     (select count(*) from finding_specimen s where s.finding = f.id) as specimens
                from finding f
               where f.reported_on between :from and :to and (:laboratory = '' or f.laboratory = :laboratory)
                 and not (f.status = 'PRELIMINARY' and exists (
                       select 1 from finding later
                        where upper(later.accession) = upper(f.accession) and later.laboratory = f.laboratory
                          and coalesce(later.item, '') = coalesce(f.item, '') and later.method = f.method
                          and later.stage = f.stage and later.status <> 'PRELIMINARY'
                          and (later.item is not null or exists (
                                select 1 from finding_specimen a join finding_specimen b on b.code = a.code
                                 where a.finding = f.id and b.finding = later.id)))))
            """;

    private static final String COUNTS = REPORTED + """
            select laboratory, performed_by, method, stage, to_char(reported_on, 'YYYY-MM') as month,
                   count(*) filter (where what in ('TEST', 'UNSUITABLE', 'INVALID_RUN')),
                   count(*) filter (where what = 'UNSUITABLE'), count(*) filter (where what = 'INVALID_RUN'),
                   count(*) filter (where what = 'NOT_TESTED'), count(*) filter (where what = 'CANCELLED'),
                   count(*) filter (where what = 'CORRECTION'),
                   cast(coalesce(sum(specimens) filter (where what in ('TEST', 'UNSUITABLE', 'INVALID_RUN')), 0) as bigint),
                   count(distinct upper(accession)) filter (where what in ('TEST', 'UNSUITABLE', 'INVALID_RUN'))
              from reported group by 1, 2, 3, 4, 5 order by 1, 2, 5, 3, 4
            """;
    private static final String LINES = REPORTED + """
            select laboratory, performed_by, accession, item, method, stage, what, tested_on, reported_on, run,
                   (select string_agg(s.code, ' ' order by s.code) from finding_specimen s where s.finding = reported.id)
              from reported order by laboratory, reported_on, accession, item, method, stage, id
            """;

    private final EntityManager entities;

    TallyQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    List<TestCount> counts(String laboratory, LocalDate from, LocalDate to) {
        return query(COUNTS, TestCount.class, laboratory, from, to).getResultList();
    }

    @SuppressWarnings("unchecked")
    List<TestLine> lines(String laboratory, LocalDate from, LocalDate to) {
        return query(LINES, TestLine.class, laboratory, from, to).getResultList();
    }

    private Query query(String sql, Class<?> row, String laboratory, LocalDate from, LocalDate to) {
        return entities.createNativeQuery(sql, row)
                .setParameter("laboratory", laboratory)
                .setParameter("from", from)
                .setParameter("to", to);
    }
}
