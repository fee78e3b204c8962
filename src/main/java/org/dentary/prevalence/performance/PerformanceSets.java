package org.dentary.prevalence.performance;

import java.util.List;
import java.util.stream.Collectors;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.performance.PerformanceSet.Kind;

/**
 * Every set of test performance, and which of them may be used on which animals.
 *
 * @param sets by code
 */
public record PerformanceSets(List<PerformanceSet> sets) {
    /** What a question names its set by. */
    public static final String PARAMETER = "performance";

    public PerformanceSets {
        sets = List.copyOf(sets);
    }

    /**
     * The set of that code, for use on animals of that species tested for that disease.
     *
     * @param field parameter or setting that names the code
     * @param code as named, or null
     * @throws InvalidInput (422) if none is named or there is none, it is relative, of another disease or species, or no better
     *     than chance
     */
    public PerformanceSet require(String field, String code, String disease, String species) {
        if (code == null) {
            throw InvalidInput.field(
                    field,
                    "PERFORMANCE_REQUIRED",
                    "performance is missing: a true prevalence is computed with a set of test performance that you choose; "
                            + usable(disease, species));
        }
        PerformanceSet set = sets.stream()
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        field,
                        "PERFORMANCE_UNKNOWN",
                        named(field) + "'" + code + "' is no set of test performance; " + usable(disease, species)));
        if (!set.disease().equals(disease)) {
            throw InvalidInput.field(
                    field,
                    "PERFORMANCE_OF_ANOTHER_DISEASE",
                    named(field) + "set '" + code + "' is of " + set.disease() + ", the animals were tested for "
                            + disease + "; " + usable(disease, species));
        }
        if (set.kind() == Kind.RELATIVE) {
            throw InvalidInput.field(
                    field,
                    "RELATIVE_SENSITIVITY",
                    named(field) + "set '" + code + "' is relative to another test (" + set.reference()
                            + "): it says nothing of infected"
                            + " deer that both miss, so neither a true prevalence nor a chance of detection follows from it; "
                            + usable(disease, species));
        }
        if (!set.species().contains(species)) {
            throw InvalidInput.field(
                    field,
                    "PERFORMANCE_OF_ANOTHER_SPECIES",
                    named(field) + "set '" + code + "' is of " + String.join(", ", set.species()) + ", the animals are "
                            + species + "; " + usable(disease, species));
        }
        if (!PerformanceSet.isBetterThanChance(set.sensitivity(), set.specificity())) {
            throw InvalidInput.field(
                    field,
                    "NO_BETTER_THAN_CHANCE",
                    named(field) + "sensitivity and specificity of set '" + code
                            + "' together are not above 1: no prevalence follows from" + " such a test; "
                            + usable(disease, species));
        }
        return set;
    }

    /** A parameter is told by the problem's field; a setting of the plan has to be found by people. */
    private static String named(String field) {
        return field.equals(PARAMETER) ? "" : "the plan's setting " + field + ": ";
    }

    private String usable(String disease, String species) {
        String usable = sets.stream()
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
