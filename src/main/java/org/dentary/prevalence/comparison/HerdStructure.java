package org.dentary.prevalence.comparison;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.LocalDate;
import java.util.List;
import org.dentary.prevalence.Words;

/**
 * A named, dated herd that prevalence is standardised to.
 *
 * @param code short code
 * @param name which herd
 * @param asOf the day it describes
 * @param source who estimated it and where that is written
 * @param species species code
 * @param classes deer by age class and sex, in the order fawns to adults, males first
 */
public record HerdStructure(
        String code, String name, LocalDate asOf, String source, String species, List<HerdClass> classes) {
    /** One class of the herd. */
    public record HerdClass(String ageClass, String sex, int animals) {}

    /** The deer of a class, or null if the structure has no row for it. */
    @JsonIgnore
    Integer animals(String age, String sex) {
        return classes.stream()
                .filter(one -> one.ageClass().equals(age) && one.sex().equals(sex))
                .map(HerdClass::animals)
                .findFirst()
                .orElse(null);
    }

    /** The herd as a sentence names it. */
    @JsonIgnore
    public String told() {
        return name + ", as of " + Words.day(asOf) + " (" + source + ")";
    }
}
