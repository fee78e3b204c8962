package org.dentary.prevalence;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** Counts lines by step and by the dimensions of a report, in one pass over the season's lines. */
@ApplicationScoped
class PrevalenceQueries {
    private static final String COUNTS = """
            select %s, step, count(*), count(*) filter (where outcome = 'DETECTED')
              from (select l.outcome, %s,
                           case when l.exclusion <> '' then l.exclusion
                                when not (l.origin in (:origin) and l.mortality_source in (:source)
                                          and l.clinical_signs in (:signs) and l.sampling_basis in (:basis))
                                     then 'OUT_OF_SCOPE'
                                when not l.has_specimen then 'NO_SPECIMEN'
                                when l.outcome in ('NOT_TESTED', 'UNSUITABLE', 'INCONCLUSIVE', 'PENDING') then l.outcome
                                else 'COUNTED' end as step
                      %s %s) as leaving
             group by %s, step
             order by %s, step
            """;
    private static final String FOOTNOTES = """
            select l.footnotes, count(*) %s and l.footnotes <> '' and l.outcome in ('DETECTED', 'NOT_DETECTED')
             group by l.footnotes order by l.footnotes
            """;
    private static final String EVIDENCE = """
            select count(*) filter (where l.sex_evidence <> 'GENITALIA_OR_UDDER'), count(*)
              %s and l.exclusion = '' and l.outcome in ('DETECTED', 'NOT_DETECTED')
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
        query.setParameter("origin", scope.origin())
                .setParameter("source", scope.mortalitySource())
                .setParameter("signs", scope.clinicalSigns())
                .setParameter("basis", scope.samplingBasis());
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

    /** Of the counted: how many have their sex without bodily evidence, and how many there are. */
    int[] sexEvidence(Lines lines, LineFilter filter) {
        Query query = entities.createNativeQuery(EVIDENCE.formatted(lines.from() + filter.sql()));
        lines.bind(query);
        filter.bind(query);
        Object[] row = (Object[]) query.getSingleResult();
        return new int[] {((Number) row[0]).intValue(), ((Number) row[1]).intValue()};
    }

    /** Footnotes that outcomes carry, each with the number of animals. */
    @SuppressWarnings("unchecked")
    List<String> footnotes(Lines lines, LineFilter filter) {
        Query query = entities.createNativeQuery(FOOTNOTES.formatted(lines.from() + filter.sql()));
        lines.bind(query);
        filter.bind(query);
        return ((List<Object[]>) query.getResultList())
                .stream().map(row -> row[0] + " (" + row[1] + " animals)").toList();
    }
}
