package org.dentary.portal.day;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The jars that were scanned off the table held against those that should stand on it.
 *
 * @param scanned different labels scanned
 * @param missing taken that day, with somebody here and not scanned, in the order of the kits
 * @param elsewhere scanned, though the record says that a store or another organization has them
 * @param unknown scanned, and not taken that day at this station
 */
public record JarCount(int scanned, List<String> missing, List<String> elsewhere, List<String> unknown) {
    static JarCount of(List<DayQueries.Jar> jars, List<String> codes) {
        Set<String> scanned = new LinkedHashSet<>(codes);
        Map<String, DayQueries.Jar> byCode =
                jars.stream().collect(Collectors.toMap(DayQueries.Jar::code, Function.identity()));
        return new JarCount(
                scanned.size(),
                jars.stream()
                        .filter(DayQueries.Jar::isHere)
                        .map(DayQueries.Jar::code)
                        .filter(code -> !scanned.contains(code))
                        .toList(),
                scanned.stream()
                        .filter(code ->
                                byCode.containsKey(code) && !byCode.get(code).isHere())
                        .toList(),
                scanned.stream().filter(code -> !byCode.containsKey(code)).toList());
    }

    /** Whether what was scanned is what should be there. */
    public boolean agrees() {
        return missing.isEmpty() && elsewhere.isEmpty() && unknown.isEmpty();
    }
}
