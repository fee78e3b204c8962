package org.dentary.prevalence.performance;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.dentary.prevalence.Words;
import org.dentary.statistics.TruePrevalence;

/**
 * How often tests on tissues find infected animals and pass over the others, as a publication says it.
 *
 * @param code short code; what it says never changes
 * @param name as people say it
 * @param disease disease code
 * @param species codes of the species that the figures are of; never empty
 * @param methods codes of the test methods that it speaks of; never empty
 * @param tissues tissues that it speaks of; never empty
 * @param kind whether the figures are of infected animals at all
 * @param reference what the test was held against
 * @param sensitivity in [0, 1], as stated or detected of infected
 * @param specificity in [0, 1], as stated or not detected of uninfected
 * @param study the counts behind them, or null where they are stated and so taken as known
 * @param population which animals the figures are of
 * @param source publication and where in it
 * @param sourceSeen whether anybody here has read them there
 * @param asOf the day on which they were taken from it
 */
public record PerformanceSet(
        String code,
        String name,
        String disease,
        List<String> species,
        List<String> methods,
        List<String> tissues,
        Kind kind,
        String reference,
        double sensitivity,
        double specificity,
        Study study,
        String population,
        String source,
        Seen sourceSeen,
        LocalDate asOf) {
    /** What a sensitivity is a share of. */
    public enum Kind {
        /** Of infected animals. */
        ANIMAL_LEVEL,
        /** Of animals that another test detected: says nothing of the infected that both miss. */
        RELATIVE
    }

    /** Where the figures come from. */
    public enum Seen {
        READ,
        FROM_MEMORY,
        INVENTED
    }

    /** A study's counts. */
    public record Study(int infected, int detectedOfInfected, int uninfected, int notDetectedOfUninfected) {}

    public PerformanceSet {
        species = List.copyOf(species);
        methods = List.copyOf(methods);
        tissues = List.copyOf(tissues);
    }

    /** Whether a test of that sensitivity and specificity, each in [0, 1], tells infected animals from others at all. */
    public static boolean isBetterThanChance(double sensitivity, double specificity) {
        return sensitivity + specificity > 1 + 1e-12;
    }

    /** True prevalence behind so many detected of so many tested; its numbers are null where nobody was tested. */
    public TruePrevalence truth(int detected, int counted, double confidence) {
        return study == null
                ? TruePrevalence.known(detected, counted, sensitivity, specificity, confidence)
                : TruePrevalence.estimated(
                        detected,
                        counted,
                        new TruePrevalence.Validation(
                                study.detectedOfInfected(),
                                study.infected(),
                                study.notDetectedOfUninfected(),
                                study.uninfected()),
                        confidence);
    }

    /** {@code 0.92 (138 of 150 infected)}, or {@code 0.92 (as stated, taken as known)}. */
    @JsonIgnore
    public String getSensitivityWords() {
        return told(sensitivity, study == null ? 0 : study.detectedOfInfected(), study == null ? 0 : study.infected());
    }

    /** As {@link #getSensitivityWords}. */
    @JsonIgnore
    public String getSpecificityWords() {
        return told(
                specificity,
                study == null ? 0 : study.notDetectedOfUninfected(),
                study == null ? 0 : study.uninfected());
    }

    /** Where it is from, as a reader has to know it. */
    @JsonIgnore
    public String getSeenWords() {
        return switch (sourceSeen) {
            case READ -> "figures read there on " + Words.day(asOf);
            case FROM_MEMORY -> "figures from memory, written down on " + Words.day(asOf) + " and not looked up";
            case INVENTED -> "invented on " + Words.day(asOf) + ": no animal was ever tested for these figures";
        };
    }

    private String told(double share, int part, int whole) {
        String figure = String.format(Locale.ROOT, "%.4f", share).replaceFirst("\\.?0+$", "");
        return figure + (study == null ? " (as stated, taken as known)" : " (" + part + " of " + whole + ")");
    }
}
