package org.dentary.prevalence.question;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.dentary.prevalence.Words;

/**
 * Which animals a report counts. The default is hunter harvest without seen signs; anything else is an explicit choice
 * that the report says and warns about.
 *
 * @param origin allowed origins; never empty, as the others
 * @param mortalitySource allowed mortality sources
 * @param clinicalSigns allowed observations of signs
 * @param samplingBasis allowed reasons for sampling
 */
public record Scope(
        List<String> origin, List<String> mortalitySource, List<String> clinicalSigns, List<String> samplingBasis) {
    public static final List<String> ORIGINS = List.of("WILD", "CAPTIVE", "ESCAPED_CAPTIVE", "UNKNOWN");
    public static final List<String> SOURCES = List.of(
            "HUNTER_HARVEST",
            "VEHICLE",
            "FOUND_DEAD",
            "PREDATOR",
            "AGENCY_REMOVAL",
            "DAMAGE_PERMIT",
            "LIVE",
            "OTHER",
            "UNKNOWN");
    public static final List<String> SIGNS = List.of("NONE_SEEN", "SEEN", "NOT_OBSERVED");
    public static final List<String> BASES =
            List.of("MANDATORY", "VOLUNTARY", "QUOTA", "HUNTER_REQUESTED", "TARGETED", "UNKNOWN", "OTHER");

    public static final Scope DEFAULT = new Scope(
            List.of("WILD"),
            List.of("HUNTER_HARVEST"),
            List.of("NONE_SEEN", "NOT_OBSERVED"),
            List.of("MANDATORY", "VOLUNTARY", "QUOTA"));

    /** The name of the {@link Step} at which a line {@code l} leaves, as SQL; {@link #bind} sets its parameters. */
    public static final String STEP = """
            case when l.exclusion <> '' then l.exclusion
                 when not (l.origin in (:origin) and l.mortality_source in (:source)
                           and l.clinical_signs in (:signs) and l.sampling_basis in (:basis)) then 'OUT_OF_SCOPE'
                 when not l.has_specimen then 'NO_SPECIMEN'
                 when l.outcome in ('NOT_TESTED', 'UNSUITABLE', 'INCONCLUSIVE', 'PENDING') then l.outcome
                 else 'COUNTED' end""";

    public Scope {
        origin = List.copyOf(origin);
        mortalitySource = List.copyOf(mortalitySource);
        clinicalSigns = List.copyOf(clinicalSigns);
        samplingBasis = List.copyOf(samplingBasis);
    }

    /** What differs from the default scope, as warnings in words; empty for the default. */
    public List<String> warnings() {
        List<String> warnings = new ArrayList<>();
        warn(warnings, "origin", origin, DEFAULT.origin);
        warn(warnings, "mortality source", mortalitySource, DEFAULT.mortalitySource);
        warn(warnings, "clinical signs", clinicalSigns, DEFAULT.clinicalSigns);
        warn(warnings, "sampling basis", samplingBasis, DEFAULT.samplingBasis);
        return warnings;
    }

    /** Sets the parameters that {@link #STEP} names. */
    public void bind(jakarta.persistence.Query query) {
        query.setParameter("origin", origin)
                .setParameter("source", mortalitySource)
                .setParameter("signs", clinicalSigns)
                .setParameter("basis", samplingBasis);
    }

    private static void warn(List<String> warnings, String what, List<String> chosen, List<String> usual) {
        if (!new java.util.HashSet<>(chosen).equals(new java.util.HashSet<>(usual))) {
            warnings.add("Chosen " + what + ": " + words(chosen) + " (the default is "
                    + words(usual)
                    + "). Animals taken for different reasons differ in how often the disease is found; a pooled figure"
                    + " describes neither group.");
        }
    }

    private static String words(List<String> codes) {
        return codes.stream().map(Words::of).collect(java.util.stream.Collectors.joining(", "));
    }

    /** The scope as it is told in an answer, in alphabetical order of the fields. */
    public Map<String, List<String>> told() {
        Map<String, List<String>> told = new TreeMap<>();
        told.put("clinicalSigns", clinicalSigns);
        told.put("mortalitySource", mortalitySource);
        told.put("origin", origin);
        told.put("samplingBasis", samplingBasis);
        return told;
    }
}
