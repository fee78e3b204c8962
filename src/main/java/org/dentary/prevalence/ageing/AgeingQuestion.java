package org.dentary.prevalence.ageing;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.question.ReportQuestion;

/**
 * What is asked of ageing error, as its address says it.
 *
 * @param report the prevalence report by age class and sex whose age pattern is asked about
 * @param matrix code of a matrix, or {@code KNOWN_AGE}
 */
record AgeingQuestion(ReportQuestion report, String matrix) {
    static final String KIND = "ageing-error";

    /**
     * Reads the parameters of an address.
     *
     * @throws InvalidInput naming the parameter, what was given and what is allowed
     */
    static AgeingQuestion of(Map<String, List<String>> parameters) {
        Map<String, List<String>> rest = new LinkedHashMap<>(parameters);
        List<String> given = rest.remove("matrix");
        if (given == null || given.stream().allMatch(String::isBlank)) {
            throw InvalidInput.field(
                    "matrix",
                    "REQUIRED",
                    "matrix is missing; give the code of one (/api/v1/ageing-error-matrices) or KNOWN_AGE");
        }
        if (given.size() > 1) {
            throw InvalidInput.field(
                    "matrix", "REPEATED", "matrix is given " + given.size() + " times; ask once for each");
        }
        for (String name : List.of("interval", "confidence")) {
            if (rest.containsKey(name)) {
                throw InvalidInput.field(
                        name,
                        "NO_INTERVAL",
                        "a what-if has no interval, so " + name + " says nothing here; leave it out. /api/v1/prevalence"
                                + " gives the intervals of the classes as read");
            }
        }
        for (String name : List.of("by", "columns", "with")) {
            if (rest.containsKey(name)) {
                throw InvalidInput.field(
                        name,
                        "NOT_HERE",
                        "the age pattern is always by age class and sex; leave " + name
                                + " out, or ask for prevalence");
            }
        }
        ReportQuestion report = ReportQuestion.of(rest);
        for (String field : List.of("ageClass", "season", "disease", "species")) {
            if (report.filters(field)) {
                throw InvalidInput.field(
                        field,
                        "IMPOSSIBLE_COMBINATION",
                        "an age pattern needs every age class: animals that belong to one are read as another. Leave the"
                                + " filter " + field + " out");
            }
        }
        return new AgeingQuestion(report, given.get(0).trim());
    }

    /** The address's part behind the question mark that asks the same again. */
    String query() {
        return report.query()
                        .replaceAll("(^|&)(by|interval|confidence)=[^&]*", "")
                        .replaceFirst("^&", "") + "&matrix=" + URLEncoder.encode(matrix, StandardCharsets.UTF_8);
    }

    /** The question in a fixed form, the key of a stored answer. */
    Map<String, Object> canonical() {
        Map<String, Object> told = new TreeMap<>();
        told.put("report", KIND);
        told.put("here", report.canonical());
        told.put("matrix", matrix);
        return told;
    }

    /** The question as {@link #canonical} told it. */
    static AgeingQuestion told(Map<String, Object> question, UUID cut) {
        Map<String, Object> here = new TreeMap<>();
        ((Map<?, ?>) question.get("here")).forEach((name, value) -> here.put(name.toString(), value));
        return new AgeingQuestion(
                ReportQuestion.told(here, cut), question.get("matrix").toString());
    }
}
