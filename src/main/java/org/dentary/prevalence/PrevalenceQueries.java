package org.dentary.prevalence;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.prevalence.linelist.LineFilter;
import org.dentary.prevalence.question.Dimension;
import org.dentary.prevalence.question.Lines;
import org.dentary.prevalence.question.Scope;
import org.dentary.prevalence.question.Step;

/** Counts lines by step and by the dimensions of a report, in one pass over the season's lines. */
@ApplicationScoped
class PrevalenceQueries {
    private static final String COUNTS = """
            select %s, step, count(*), count(*) filter (where outcome = 'DETECTED')
              from (select l.outcome, %s, """ + Scope.STEP + """
                     as step %s %s) as leaving
             group by %s, step
             order by %s, step
            """;
    private static final String OF_COUNTED =
            "(select l.*, " + Scope.STEP + " as step %s) as l where l.step = 'COUNTED'";
    private static final String FOOTNOTES = """
            select code, cast(count(*) as int) as animals
              from (select unnest(string_to_array(trim(l.footnotes), ' ')) as code from """ + OF_COUNTED + """
            ) as marked where code <> '' group by code order by code
            """;
    private static final String EVIDENCE = """
            select count(*) filter (where l.sex_evidence <> 'GENITALIA_OR_UDDER'), count(*),
                   count(*) filter (where l.sex = 'UNKNOWN') from """ + OF_COUNTED;
    /** Readings and decisions are only ever added, so that what stood at a moment can be told for ever. */
    private static final String AGES = """
            with aged as materialized (
              select case when d.id is not null then 'DESIGNATED' when r.id is not null then 'READ' else 'NONE' end as how,
                     coalesce(case when d.id is not null then d.method else r.method end, '') as method,
                     case when d.id is null then r.examiner end as examiner, l.age_disputed
                from (select l.* from """ + OF_COUNTED + """
              and l.age_class <> 'UNKNOWN') as l
                left join lateral (
                  select d.id, r.method from designated_age d left join jaw_reading r on r.id = d.reading
                   where d.kit = l.kit and d.at <= cast(:until as timestamptz) order by d.id desc limit 1) as d on true
                left join lateral (
                  select r.id, r.method, r.examiner from jaw_reading r
                   where r.kit = l.kit and r.received_at <= cast(:until as timestamptz) and r.age_class = l.age_class
                     and not r.disputed and r.certainty <> 'UNRESOLVED' and r.method in (:looking)
                   order by r.received_at, r.id limit 1) as r on true)
            select how, method, cast(count(*) as int), cast((select count(distinct examiner) from aged) as int),
                   cast((select count(*) from aged where age_disputed) as int)
              from aged group by how, method order by how, count(*) desc, method
            """;

    private static final List<String> LOOKING = List.of("TOOTH_REPLACEMENT", "TOOTH_WEAR", "TOOTH_ROW_LENGTH");
    private static final String UNKNOWN_AGE = """
            select l.sex, l.mortality_source as mortalitySource,
                   case when l.age_disputed then 'DISPUTED' when l.jaw_status = 'READ' then 'READ_WITHOUT_CLASS'
                        else l.jaw_status end as reason,
                   case when l.jaw_status = 'NOT_EXAMINED' and not l.age_disputed then l.jaw_reason else '' end as words,
                   cast(count(*) as int) as animals
              from """ + OF_COUNTED + """
             and l.age_class = 'UNKNOWN'
             group by 1, 2, 3, 4 order by 5 desc, 1, 2, 3, 4
            """;

    private final EntityManager entities;

    PrevalenceQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** One group of animals that leave at the same step. */
    record Count(List<String> values, Step step, int animals, int detected) {}

    /** Counts in the order of the dimensions' values. */
    @SuppressWarnings("unchecked")
    List<Count> counts(Lines lines, LineFilter filter, Scope scope, List<Dimension> by) {
        List<String> names = by.stream()
                .map(d -> d.name().toLowerCase(java.util.Locale.ROOT))
                .map(n -> "by_" + n)
                .toList();
        String columns = String.join(", ", names);
        String expressions = by.stream()
                .map(d -> d.expression() + " as by_" + d.name().toLowerCase(java.util.Locale.ROOT))
                .collect(Collectors.joining(", "));
        Query query = entities.createNativeQuery(
                COUNTS.formatted(columns, expressions, lines.from(), filter.sql(), columns, columns));
        lines.bind(query);
        filter.bind(query);
        scope.bind(query);
        List<Count> counts = new ArrayList<>();
        for (Object[] row : (List<Object[]>) query.getResultList()) {
            int n = by.size();
            counts.add(new Count(
                    Arrays.stream(row, 0, n).map(String::valueOf).toList(),
                    Step.valueOf(row[n].toString()),
                    ((Number) row[n + 1]).intValue(),
                    ((Number) row[n + 2]).intValue()));
        }
        return counts;
    }

    /** Of the counted: how many have their sex without bodily evidence, how many there are, how many of unknown sex. */
    int[] sexEvidence(Lines lines, LineFilter filter, Scope scope) {
        Object[] row = (Object[]) counted(EVIDENCE, null, lines, filter, scope).getSingleResult();
        return new int[] {((Number) row[0]).intValue(), ((Number) row[1]).intValue(), ((Number) row[2]).intValue()};
    }

    /** A footnote's code and how many counted animals carry it. */
    record Marked(String code, Integer animals) {}

    /** Footnotes that the outcomes of counted animals carry, by code. */
    @SuppressWarnings("unchecked")
    List<Marked> footnotes(Lines lines, LineFilter filter, Scope scope) {
        return counted(FOOTNOTES, Marked.class, lines, filter, scope).getResultList();
    }

    /**
     * What the known ages of the counted rest on.
     *
     * @param until the moment at which the lines stood
     */
    @SuppressWarnings("unchecked")
    AgeBasis ages(Lines lines, LineFilter filter, Scope scope, Instant until) {
        List<Object[]> rows = counted(AGES, null, lines, filter, scope)
                .setParameter("until", until)
                .setParameter("looking", LOOKING)
                .getResultList();
        return new AgeBasis(
                rows.stream()
                        .map(row -> new AgeBasis.Group((String) row[0], (String) row[1], ((Number) row[2]).intValue()))
                        .toList(),
                rows.isEmpty() ? 0 : ((Number) rows.get(0)[3]).intValue(),
                rows.isEmpty() ? 0 : ((Number) rows.get(0)[4]).intValue());
    }

    /** Counted animals without an age class, by sex, source and reason, most first. */
    @SuppressWarnings("unchecked")
    List<PrevalenceReport.UnknownAgeRow> unknownAge(Lines lines, LineFilter filter, Scope scope) {
        return counted(UNKNOWN_AGE, PrevalenceReport.UnknownAgeRow.class, lines, filter, scope)
                .getResultList();
    }

    private Query counted(String sql, Class<?> row, Lines lines, LineFilter filter, Scope scope) {
        String text = sql.formatted(lines.from() + filter.sql());
        Query query = row == null ? entities.createNativeQuery(text) : entities.createNativeQuery(text, row);
        lines.bind(query);
        filter.bind(query);
        scope.bind(query);
        return query;
    }
}
