package org.dentary.prevalence.truth;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.truth.PerformanceSet.Kind;
import org.dentary.prevalence.truth.PerformanceSet.Seen;
import org.dentary.prevalence.truth.PerformanceSet.Study;

/** Reads sets of test performance. */
@ApplicationScoped
public class PerformanceQueries {
    private static final String PARAMETER = "performance";
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
    public List<PerformanceSet> all() {
        return ((List<Row>) entities.createNativeQuery(ALL, Row.class).getResultList())
                .stream().map(Row::set).toList();
    }

    /**
     * The set of that code, for use on animals of that species tested for that disease.
     *
     * @param code as asked, or null
     * @throws InvalidInput (422) if none is named or there is none, it is relative, of another disease or species, or no better
     *     than chance
     */
    public PerformanceSet require(String code, String disease, String species) {
        List<PerformanceSet> all = all();
        if (code == null) {
            throw InvalidInput.field(
                    PARAMETER,
                    "PERFORMANCE_REQUIRED",
                    "performance is missing: a true prevalence is computed with a set of test performance that you choose; "
                            + usable(all, disease, species));
        }
        PerformanceSet set = all.stream()
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        PARAMETER,
                        "PERFORMANCE_UNKNOWN",
                        "'" + code + "' is no set of test performance; " + usable(all, disease, species)));
        if (!set.disease().equals(disease)) {
            throw InvalidInput.field(
                    PARAMETER,
                    "PERFORMANCE_OF_ANOTHER_DISEASE",
                    "set '" + code + "' is of " + set.disease() + ", the animals were tested for " + disease + "; "
                            + usable(all, disease, species));
        }
        if (set.kind() == Kind.RELATIVE) {
            throw InvalidInput.field(
                    PARAMETER,
                    "RELATIVE_SENSITIVITY",
                    "set '" + code + "' is relative to another test (" + set.reference()
                            + "): it says nothing of infected"
                            + " deer that both miss, so no true prevalence follows from it; "
                            + usable(all, disease, species));
        }
        if (!set.species().contains(species)) {
            throw InvalidInput.field(
                    PARAMETER,
                    "PERFORMANCE_OF_ANOTHER_SPECIES",
                    "set '" + code + "' is of " + String.join(", ", set.species()) + ", the animals are " + species
                            + "; " + usable(all, disease, species));
        }
        if (!PerformanceSet.isBetterThanChance(set.sensitivity(), set.specificity())) {
            throw InvalidInput.field(
                    PARAMETER,
                    "NO_BETTER_THAN_CHANCE",
                    "sensitivity and specificity of set '" + code
                            + "' together are not above 1: no prevalence follows from" + " such a test; "
                            + usable(all, disease, species));
        }
        return set;
    }

    private static String usable(List<PerformanceSet> all, String disease, String species) {
        String usable = all.stream()
                .filter(set -> set.kind() == Kind.ANIMAL_LEVEL
                        && set.disease().equals(disease)
                        && set.species().contains(species))
                .map(PerformanceSet::code)
                .collect(Collectors.joining(", "));
        return usable.isEmpty()
                ? "none of animal level is set up for " + disease + " in " + species
                        + ": the coordinator imports test-performance"
                : "allowed: " + usable;
    }
}
