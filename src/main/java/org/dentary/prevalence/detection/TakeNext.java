package org.dentary.prevalence.detection;

import java.util.List;

/**
 * What to take next in a unit that is short of its target; one of the choices is enough.
 *
 * @param stations stations of the unit, in set-up order; empty if it has none
 * @param pending animals whose result is awaited; the numbers assume that nothing is detected in them
 * @param choices fewest animals first; never empty
 */
public record TakeNext(String unit, String unitName, List<Station> stations, int pending, List<Choice> choices) {

    /** A station of the unit. */
    public record Station(String code, String name) {}

    /**
     * How many more of a class.
     *
     * @param ageClass an age class, or ANY
     * @param sex a sex, or ANY
     * @param mortalitySource the sources that count, separated by blanks
     * @param relativeRisk the class's weight; null where all animals count alike
     * @param why why this class; may be empty
     */
    public record Choice(
            String ageClass,
            String sex,
            String mortalitySource,
            Double relativeRisk,
            int more,
            String words,
            String why) {}

    /** Whether somebody who serves these stations can do something about it; {@code *} is every station. */
    public boolean isFor(java.util.Collection<String> served) {
        return stations.isEmpty()
                || served.contains("*")
                || stations.stream().anyMatch(station -> served.contains(station.code()));
    }

    /** The stations' names in words. */
    @com.fasterxml.jackson.annotation.JsonIgnore
    public String stationWords() {
        return stations.isEmpty()
                ? "any station"
                : stations.stream().map(Station::name).collect(java.util.stream.Collectors.joining(", "));
    }
}
