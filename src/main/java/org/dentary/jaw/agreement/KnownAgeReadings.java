package org.dentary.jaw.agreement;

import java.util.List;
import org.dentary.jaw.key.AgeClass;

/**
 * How jaws of known age were read by persons who did not know it.
 *
 * @param species species code
 * @param counts a row for each pair of known classes that has a reading; a reading without a class has the read class
 *     {@code UNKNOWN}
 * @param jaws by known class, how many jaws those readings are of
 */
public record KnownAgeReadings(String species, List<Count> counts, List<Jaws> jaws) {
    /** So many readings of jaws of one known class as one class. */
    public record Count(AgeClass known, AgeClass read, int readings) {}

    /** So many jaws of one known class. */
    public record Jaws(AgeClass known, int jaws) {}

    /** Readings of a known class as a class; 0 where there are none. */
    public int readings(AgeClass known, AgeClass read) {
        return counts.stream()
                .filter(count -> count.known() == known && count.read() == read)
                .mapToInt(Count::readings)
                .sum();
    }

    /** Jaws of a known class that were read; 0 where there are none. */
    public int jaws(AgeClass known) {
        return jaws.stream()
                .filter(one -> one.known() == known)
                .mapToInt(Jaws::jaws)
                .sum();
    }
}
