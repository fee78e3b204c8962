package org.dentary.calculators.detection;

import java.util.List;
import org.dentary.calculators.Asked;
import org.dentary.calculators.Field;
import org.dentary.statistics.detection.Herd;

/** A herd as an address describes it: its size, and either how many are infected or a design prevalence. */
record AskedHerd(int population, Integer infected, Double designPrevalence) {

    static final List<Field> FIELDS = List.of(
            Field.whole("population", "Animals in the herd", "One well-mixed unit"),
            Field.whole("infected", "Infected animals to be detected", "Or give the design prevalence instead"),
            Field.number(
                    "designPrevalence",
                    "Design prevalence",
                    "A fraction, such as 0.01; times the herd, rounded down, at least 1 animal",
                    ""));

    /** Reads the herd; faults are noted with {@code asked}. */
    static AskedHerd of(Asked asked) {
        int population = asked.whole("population");
        boolean both = asked.has("infected") && asked.has("designPrevalence");
        boolean neither = !asked.has("infected") && !asked.has("designPrevalence");
        if (both || neither) {
            asked.refuse(
                    "infected",
                    both ? "INVALID_VALUE" : "REQUIRED",
                    "give infected or designPrevalence, one of the two");
        }
        return new AskedHerd(
                population,
                asked.has("infected") ? Integer.valueOf(asked.whole("infected")) : null,
                asked.has("designPrevalence") ? Double.valueOf(asked.number("designPrevalence")) : null);
    }

    /**
     * @throws org.dentary.statistics.OutOfDomain when a number is out of range
     */
    Herd herd() {
        return infected == null
                ? Herd.atDesignPrevalence(population, designPrevalence)
                : new Herd(population, infected);
    }
}
