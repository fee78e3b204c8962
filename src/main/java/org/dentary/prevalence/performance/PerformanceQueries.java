package org.dentary.prevalence.performance;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.dentary.prevalence.performance.PerformanceSet.Kind;
import org.dentary.prevalence.performance.PerformanceSet.Seen;
import org.dentary.prevalence.performance.PerformanceSet.Study;

/** Reads sets of test performance. */
@ApplicationScoped
public class PerformanceQueries {
    private static final String ALL = """
            select code, name, disease, array_to_string(species, ' ') as species, array_to_string(methods, ' ') as methods,
                   array_to_string(tissues, ' ') as tissues, kind, reference, sensitivity, specificity, infected,
                   detected_of_infected as detectedOfInfected, uninfected,
                   not_detected_of_uninfected as notDetectedOfUninfected, population, source, source_seen as sourceSeen,
                   as_of as asOf
              from test_performance order by code
            """;

    private final EntityManager entities;

    PerformanceQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** One row; lists with blanks between. */
    record Row(
            String code,
            String name,
            String disease,
            String species,
            String methods,
            String tissues,
            String kind,
            String reference,
            BigDecimal sensitivity,
            BigDecimal specificity,
            Integer infected,
            Integer detectedOfInfected,
            Integer uninfected,
            Integer notDetectedOfUninfected,
            String population,
            String source,
            String sourceSeen,
            LocalDate asOf) {
        PerformanceSet set() {
            Study study = infected == null
                    ? null
                    : new Study(infected, detectedOfInfected, uninfected, notDetectedOfUninfected);
            return new PerformanceSet(
                    code,
                    name,
                    disease,
                    words(species),
                    words(methods),
                    words(tissues),
                    Kind.valueOf(kind),
                    reference,
                    study == null ? sensitivity.doubleValue() : (double) detectedOfInfected / infected,
                    study == null ? specificity.doubleValue() : (double) notDetectedOfUninfected / uninfected,
                    study,
                    population,
                    source,
                    Seen.valueOf(sourceSeen),
                    asOf);
        }

        private static List<String> words(String text) {
            return Arrays.asList(text.split(" "));
        }
    }

    /** All of them, by code; one statement. */
    @SuppressWarnings("unchecked")
    public PerformanceSets all() {
        return new PerformanceSets(
                ((List<Row>) entities.createNativeQuery(ALL, Row.class).getResultList())
                        .stream().map(Row::set).toList());
    }
}
