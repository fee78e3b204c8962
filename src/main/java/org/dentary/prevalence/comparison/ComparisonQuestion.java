package org.dentary.prevalence.comparison;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.question.ReportQuestion;

/**
 * What is to be compared, as its address says it.
 *
 * @param report the prevalence report by age class and sex that is compared within
 * @param with another season, or a data cut of one; or null
 * @param herd code of a herd structure, or null
 * @param ages mean age in years by age class, as stated; may lack classes
 */
record ComparisonQuestion(ReportQuestion report, String with, String herd, Map<String, Double> ages) {
    static final String KIND = "comparisons";
    private static final double OLDEST = 30;
    private static final Map<String, String> AGES =
            Map.of("ageFawn", "FAWN", "ageYearling", "YEARLING", "ageAdult", "ADULT");

    /**
     * Reads the parameters of an address.
     *
     * @throws InvalidInput naming the parameter, what was given and what is allowed
     */
    static ComparisonQuestion of(Map<String, List<String>> parameters) {
        Map<String, List<String>> rest = new LinkedHashMap<>(parameters);
        String with = one(rest, "with");
        String herd = one(rest, "herd");
        Map<String, Double> ages = new TreeMap<>();
        AGES.forEach((name, age) -> {
            String given = one(rest, name);
            if (given != null) {
                ages.put(age, years(name, given));
            }
        });
        for (String name : List.of("by", "columns")) {
            if (rest.containsKey(name)) {
                throw InvalidInput.field(
                        name,
                        "NOT_HERE",
                        "a comparison is always by age class and sex; leave " + name + " out, or ask for prevalence");
            }
        }
        if (rest.containsKey("interval")) {
            throw InvalidInput.field(
                    "interval",
                    "NOT_HERE",
                    "each comparison has the interval of its own method, named beside it; leave interval out");
        }
        ReportQuestion report = ReportQuestion.of(rest);
        for (String field : List.of("ageClass", "sex", "season", "disease", "species")) {
            if (report.filters(field)) {
                throw InvalidInput.field(
                        field,
                        "IMPOSSIBLE_COMBINATION",
                        "a comparison of sexes and age classes needs all of them; leave the filter " + field + " out");
            }
        }
        return new ComparisonQuestion(report, with, herd, ages);
    }

    private static String one(Map<String, List<String>> parameters, String name) {
        List<String> given = parameters.remove(name);
        if (given == null || given.stream().allMatch(String::isBlank)) {
            return null;
        }
        if (given.size() > 1) {
            throw InvalidInput.field(name, "REPEATED", name + " is given " + given.size() + " times; give it once");
        }
        return given.get(0).trim();
    }

    private static double years(String name, String given) {
        try {
            double years = Double.parseDouble(given);
            if (years >= 0 && years <= OLDEST) {
                return years;
            }
        } catch (NumberFormatException e) {
            // told below, together with numbers out of range
        }
        throw InvalidInput.field(
                name, "OUT_OF_RANGE", "'" + given + "' is not an age; give years from 0 to 30, such as 1.5");
    }

    /** The question in a fixed form, the key of a stored answer; {@code other} is the settled other season or null. */
    Map<String, Object> canonical(ReportQuestion here, ReportQuestion other) {
        Map<String, Object> told = new TreeMap<>();
        told.put("report", KIND);
        told.put("here", here.canonical());
        List<Object> with = new ArrayList<>();
        if (other != null) {
            with.add(other.season());
            with.add(other.cut() == null ? "live" : other.cut().toString());
        }
        told.put("with", with);
        told.put("herd", herd == null ? "" : herd);
        told.put("ages", ages);
        return told;
    }
}
