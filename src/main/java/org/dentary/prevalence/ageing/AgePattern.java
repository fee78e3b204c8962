package org.dentary.prevalence.ageing;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;
import org.dentary.prevalence.Words;

/**
 * The age pattern of one sex as read and as it would be.
 *
 * @param sex {@code MALE}, {@code FEMALE}, {@code UNKNOWN} or {@code ALL}, which is the others added up
 * @param way how the what-if was come by
 * @param classes fawns, yearlings, adults
 * @param unknownAge animals of unknown age, left as they are
 * @param all everybody as read, unknown age included; the what-if leaves it the same
 * @param ratio prevalence of adults over that of yearlings
 * @param step prevalence of adults less that of yearlings, in percentage points
 * @param unexplained animals that would have been read otherwise, where the matrix does not fit; else 0
 */
public record AgePattern(
        String sex,
        Way way,
        List<ClassFigures> classes,
        Read unknownAge,
        Read all,
        Between ratio,
        Between step,
        double unexplained) {

    /** How a what-if was come by. */
    public enum Way {
        /** The equations of the matrix have a solution of 0 or more in every class. */
        SOLVED,
        /** They have not: the counts of 0 or more under which the readings are most likely. */
        LIKELIEST,
        /** The matrix has no table for this sex: as read. */
        AS_READ,
        /** The sexes added up. */
        ADDED_UP,
        /** Nobody of a known age class was counted. */
        NOBODY
    }

    /** Animals as read. {@code prevalence} in [0, 1]; null: not sampled. */
    public record Read(int counted, int detected, Double prevalence) {
        static Read of(int counted, int detected) {
            return new Read(counted, detected, counted == 0 ? null : (double) detected / counted);
        }
    }

    /** Animals as they would be, not whole. {@code prevalence} in [0, 1]; null below one animal. */
    public record WhatIf(double counted, double detected, Double prevalence) {}

    /**
     * One age class.
     *
     * @param read as read
     * @param whatIf if misread as the matrix says
     * @param changeInPoints prevalence of the what-if less that as read, in percentage points; null where one is missing
     * @param solution of the equations before any class below 0 was ruled out; prevalence null where a count is below 0
     * @param readAgain if the classes as read were true and read once more with this error
     */
    public record ClassFigures(
            String ageClass, Read read, WhatIf whatIf, Double changeInPoints, WhatIf solution, WhatIf readAgain) {}

    /** A figure between adults and yearlings; null where it is undefined. */
    public record Between(Double read, Double whatIf, Double readAgain) {}

    /** Whether somebody of a known age class was counted. */
    @JsonIgnore
    boolean sampled() {
        return classes.stream().anyMatch(one -> one.read().counted() > 0);
    }

    /** {@code MALE} as "males". */
    @JsonIgnore
    String sexWords() {
        return switch (sex) {
            case "MALE" -> "males";
            case "FEMALE" -> "females";
            case "ALL" -> "all sexes";
            default -> "sex " + Words.of(sex).toLowerCase(java.util.Locale.ROOT);
        };
    }

    @JsonIgnore
    ClassFigures of(String ageClass) {
        return classes.stream()
                .filter(one -> one.ageClass().equals(ageClass))
                .findFirst()
                .orElseThrow();
    }
}
