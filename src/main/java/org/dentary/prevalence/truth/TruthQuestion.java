package org.dentary.prevalence.truth;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.performance.PerformanceSets;
import org.dentary.prevalence.question.ReportQuestion;

/**
 * A true prevalence asked for, as its address says it.
 *
 * @param report the prevalence report whose figures are corrected
 * @param performance code of the set of test performance, or null
 */
record TruthQuestion(ReportQuestion report, String performance) {
    static final String KIND = "true-prevalence";
    private static final String PERFORMANCE = PerformanceSets.PARAMETER;

    /**
     * Reads the parameters of an address.
     *
     * @throws InvalidInput naming the parameter, what was given and what is allowed
     */
    static TruthQuestion of(Map<String, List<String>> parameters) {
        Map<String, List<String>> rest = new LinkedHashMap<>(parameters);
        if (rest.containsKey("with")) {
            throw InvalidInput.field(
                    "with",
                    "NOT_HERE",
                    "true prevalence is told of one season at a time; leave with out and ask for each season");
        }
        List<String> given = rest.remove(PERFORMANCE);
        List<String> said = given == null
                ? List.of()
                : given.stream()
                        .map(String::trim)
                        .filter(text -> !text.isEmpty())
                        .toList();
        if (said.size() > 1) {
            throw InvalidInput.field(
                    PERFORMANCE,
                    "REPEATED",
                    "performance is given " + said.size()
                            + " times; give it once: figures by several sets are never pooled");
        }
        return new TruthQuestion(ReportQuestion.of(rest).inRows(), said.isEmpty() ? null : said.get(0));
    }

    /** The question in a fixed form, the key of a stored answer. */
    Map<String, Object> canonical() {
        Map<String, Object> told = new TreeMap<>(report.canonical());
        told.put("report", KIND);
        told.put(PERFORMANCE, performance);
        return told;
    }

    /** The question as {@link #canonical} told it. */
    static TruthQuestion told(Map<String, Object> question, UUID cut) {
        Map<String, Object> rest = new TreeMap<>(question);
        rest.remove("report");
        String performance = rest.remove(PERFORMANCE).toString();
        return new TruthQuestion(ReportQuestion.told(rest, cut), performance);
    }
}
