package org.dentary.prevalence.comparison;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.PrevalenceReport;

/** Counted and detected by age class and sex, as the prevalence report counts them. */
final class ClassCounts {
    static final List<String> AGES = List.of("FAWN", "YEARLING", "ADULT");
    static final List<String> SEXES = List.of("MALE", "FEMALE");
    private static final Map<String, String> WORDS =
            Map.of("FAWN", "fawns", "YEARLING", "yearlings", "ADULT", "adults", "MALE", "males", "FEMALE", "females");

    private final Map<String, int[]> counts = new LinkedHashMap<>();
    private int unknown;

    private ClassCounts() {}

    /** From a report by age class and sex. */
    static ClassCounts of(PrevalenceReport report) {
        ClassCounts counts = new ClassCounts();
        for (PrevalenceCell cell : report.cells()) {
            String age = cell.group().get("ageClass");
            String sex = cell.group().get("sex");
            if (AGES.contains(age) && SEXES.contains(sex)) {
                counts.counts.put(key(age, sex), new int[] {cell.counted(), cell.detected()});
            } else {
                counts.unknown += cell.counted();
            }
        }
        return counts;
    }

    /** From counts given, as a test has them. */
    static ClassCounts of(Map<String, int[]> given) {
        ClassCounts counts = new ClassCounts();
        counts.counts.putAll(given);
        return counts;
    }

    static String key(String age, String sex) {
        return age + " " + sex;
    }

    /** Counted animals whose age class or sex is unknown: in no comparison between classes. */
    int unknown() {
        return unknown;
    }

    int counted(String age, String sex) {
        return counts.getOrDefault(key(age, sex), new int[2])[0];
    }

    int detected(String age, String sex) {
        return counts.getOrDefault(key(age, sex), new int[2])[1];
    }

    /** All of these classes together. */
    Group group(List<String> ages, List<String> sexes, String label) {
        int counted = 0;
        int detected = 0;
        for (String age : ages) {
            for (String sex : sexes) {
                counted += counted(age, sex);
                detected += detected(age, sex);
            }
        }
        return Group.of(label, counted, detected);
    }

    /** {@code ADULT} as "adults". */
    static String plural(String code) {
        return WORDS.get(code);
    }

    /** {@code ADULT MALE} as "adult males". */
    static String words(String age, String sex) {
        return age.toLowerCase(java.util.Locale.ROOT) + " " + plural(sex);
    }
}
