package org.dentary.result.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.result.FindingReason;
import org.dentary.result.FindingStatus;
import org.dentary.result.FindingWord;
import org.dentary.result.Stage;

/** What a column map must say before a laboratory's file can be read by it. */
final class ColumnMapRules {
    private static final Set<String> OURS = Stream.concat(ColumnMap.REQUIRED.stream(), ColumnMap.OPTIONAL.stream())
            .collect(Collectors.toCollection(TreeSet::new));
    private static final Set<String> OF_EACH_LINE = Set.of("specimen_code", "accession_number", "finding");

    private ColumnMapRules() {}

    /**
     * Every fault; empty for none.
     *
     * @param methods codes of the plan's test methods
     */
    static List<FieldProblem> problems(ColumnMap map, Set<String> methods) {
        List<FieldProblem> problems = new ArrayList<>();
        map.columns().forEach((theirs, ours) -> {
            if (!ours.isEmpty() && !OURS.contains(ours)) {
                problems.add(problem(
                        "columns",
                        "COLUMN_UNKNOWN",
                        "'" + theirs + "' leads to '" + ours + "', which is no column of ours; one of "
                                + String.join(", ", OURS) + ", or nothing to leave it out"));
            }
        });
        twice(map)
                .forEach(ours -> problems.add(problem(
                        "columns",
                        "COLUMN_TWICE",
                        "more than one column, or a column and a fixed value, leads to " + ours)));
        map.fixed().keySet().stream()
                .filter(ours -> !OURS.contains(ours) || OF_EACH_LINE.contains(ours))
                .forEach(ours -> problems.add(
                        problem("fixed", "NOT_FIXED", "'" + ours + "' cannot have the same value in every line")));
        ColumnMap.REQUIRED.stream()
                .filter(ours ->
                        !map.columns().containsValue(ours) && !map.fixed().containsKey(ours))
                .forEach(ours -> problems.add(problem(
                        "columns", "COLUMN_MISSING", "nothing leads to " + ours + "; name the column that holds it")));
        if (map.dateFormat() != null && !isFormat(map.dateFormat())) {
            problems.add(problem(
                    "dateFormat",
                    "NOT_A_FORMAT",
                    "'" + map.dateFormat() + "' is no format of days; such as MM/dd/uuuu or d-MMM-uuuu"));
        }
        Map<String, Set<String>> words = Map.of(
                "finding", names(FindingWord.values()),
                "stage", names(Stage.values()),
                "status", names(FindingStatus.values()),
                "unsuitable_reason", names(FindingReason.values()),
                "test_method", methods);
        map.words().forEach((column, pairs) -> {
            Set<String> known = words.get(column);
            if (known == null) {
                problems.add(problem(
                        "words",
                        "NO_WORDS_THERE",
                        "'" + column + "' takes no mapped words; only "
                                + String.join(", ", new TreeSet<>(words.keySet()))));
            } else {
                pairs.forEach((theirs, ours) -> check(column, ours, known, "words", problems));
            }
        });
        map.fixed().forEach((column, ours) -> {
            if (words.containsKey(column)) {
                check(column, ours, words.get(column), "fixed", problems);
            }
        });
        return problems;
    }

    private static void check(
            String column, String ours, Set<String> known, String field, List<FieldProblem> problems) {
        if (!known.contains(ours)) {
            problems.add(problem(
                    field, "WORD_UNKNOWN", "'" + ours + "' is no " + column + "; one of " + String.join(", ", known)));
        }
    }

    private static Set<String> twice(ColumnMap map) {
        Set<String> seen = new TreeSet<>();
        return Stream.concat(map.columns().values().stream(), map.fixed().keySet().stream())
                .filter(ours -> !ours.isEmpty() && !seen.add(ours))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static boolean isFormat(String pattern) {
        try {
            java.time.LocalDate day = java.time.LocalDate.of(2026, 11, 25);
            return java.time.LocalDate.parse(ColumnMap.format(pattern).format(day), ColumnMap.format(pattern))
                    .equals(day);
        } catch (RuntimeException e) {
            return false;
        }
    }

    private static Set<String> names(Enum<?>[] values) {
        return Arrays.stream(values).map(Enum::name).collect(Collectors.toCollection(TreeSet::new));
    }

    private static FieldProblem problem(String field, String rule, String message) {
        return new FieldProblem(field, rule, message);
    }
}
