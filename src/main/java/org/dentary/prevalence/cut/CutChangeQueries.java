package org.dentary.prevalence.cut;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * Which lines tell something else in one cut than in another. Lines are held against each other by what a reader of the line
 * list may know: that an outcome not released was derived anew, which revises a line too, shows neither as a change nor as
 * the cause of one.
 */
@ApplicationScoped
class CutChangeQueries {
    private static final List<String[]> TOLD = List.of(
            new String[] {"outcome", "l.outcome"},
            new String[] {"ageClass", "l.age_class"},
            new String[] {"sex", "l.sex"},
            new String[] {"managementUnit", "coalesce(l.unit, 'UNKNOWN')"},
            new String[] {"exclusion", "l.exclusion"},
            new String[] {"mortalitySource", "l.mortality_source"},
            new String[] {"samplingBasis", "l.sampling_basis"},
            new String[] {"clinicalSigns", "l.clinical_signs"},
            new String[] {"origin", "l.origin"},
            new String[] {"species", "l.species"},
            new String[] {"hasSpecimen", "l.has_specimen::text"},
            new String[] {"diedOn", "coalesce(l.died_on::text, 'UNKNOWN')"},
            new String[] {"region", "coalesce(l.region, 'UNKNOWN')"},
            new String[] {"station", "l.station"},
            new String[] {"collectionRoute", "l.collection_route"},
            new String[] {"sexEvidence", "l.sex_evidence"},
            new String[] {"ageDisputed", "l.age_disputed::text"},
            new String[] {"jawStatus", "l.jaw_status"},
            new String[] {"jawReason", "l.jaw_reason"},
            new String[] {"footnotes", "trim(l.footnotes)"});

    /** The fields that are compared, the outcome first. */
    static final List<String> FIELDS = TOLD.stream().map(field -> field[0]).toList();

    private static final String WORDS =
            TOLD.stream().map(field -> field[1]).collect(Collectors.joining(", ", "array[", "]::text[]"));

    private static final String OF_CUT = "(select l.kit, l.disease, l.id, " + WORDS
            + " as told from data_cut_line c join line l on l.id = c.line where c.cut = %s)";

    /** The revisions of a line up to the second cut's: the first after which it told what it tells there. */
    private static final String CAUSE = """
            (with revision as (select l.id, l.cause, l.season, %s as told from line l
                                where l.kit = n.kit and l.disease = n.disease and l.id <= n.id)
             select r.cause from revision r
              where r.id > (select coalesce(max(x.id), 0) from revision x
                             where x.told <> n.told or x.season is distinct from b.season)
              order by r.id limit 1)
            """.formatted(WORDS);

    private static final String CHANGES = """
            select coalesce(o.kit, n.kit), coalesce(o.disease, n.disease),
                   case when n.id is null then 'LEFT_THE_SEASON' else %s end,
                   o.told, n.told,
                   (select f.season is not distinct from b.season from line f
                     where f.kit = n.kit and f.disease = n.disease order by f.id limit 1)
              from %s o
              full join %s n on o.kit = n.kit and o.disease = n.disease
              cross join (select season from data_cut where id = :to) b
             where o.told is distinct from n.told
             order by 1, 2
            """.formatted(CAUSE, OF_CUT.formatted(":from"), OF_CUT.formatted(":to"));

    private final EntityManager entities;

    CutChangeQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** What differs from one cut to the other, by kit and disease. */
    @SuppressWarnings("unchecked")
    List<DataCutChange> changes(UUID from, UUID to) {
        return ((List<Object[]>) entities.createNativeQuery(CHANGES)
                        .setParameter("from", from)
                        .setParameter("to", to)
                        .getResultList())
                .stream()
                        .map(row -> DataCutChange.of(
                                row[0].toString(),
                                row[1].toString(),
                                row[2].toString(),
                                words(row[3]),
                                words(row[4]),
                                Boolean.TRUE.equals(row[5])))
                        .toList();
    }

    private static List<String> words(Object told) {
        return told == null ? null : Arrays.asList((String[]) told);
    }
}
