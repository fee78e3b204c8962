package org.dentary.setup;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.dentary.prevalence.performance.PerformanceSet;
import org.dentary.setup.SetUpRules.Row;
import org.dentary.setup.list.Column;
import org.dentary.setup.list.Known;
import org.dentary.setup.list.SetUpList;

/** Rules of lists whose code names several rows that are read as one thing and that reports rest on. */
final class ReferenceRules {
    private static final List<String> FRACTIONS = List.of("sensitivity", "specificity");
    private static final List<String> COUNTS =
            List.of("infected", "detected_of_infected", "uninfected", "not_detected_of_uninfected");

    private ReferenceRules() {}

    /**
     * The rows of a code agree in what they say of the whole, and a code that is there says what it said: figures were
     * published on it. A file may repeat it, but changes nothing and adds no row to it.
     */
    static void wholeAndFixed(SetUpList list, List<Row> rows, Known known, List<LineProblem> problems) {
        List<String> whole = list.columns().stream()
                .map(Column::name)
                .takeWhile(name -> !list.key().contains(name) || name.equals("code"))
                .filter(name -> !name.equals("code"))
                .toList();
        Map<String, Row> firsts = new LinkedHashMap<>();
        for (Row row : rows) {
            Row first = firsts.putIfAbsent(row.cell("code"), row);
            for (String column : whole) {
                if (first != null && !first.cell(column).equals(row.cell(column))) {
                    problems.add(new LineProblem(
                            row.line(),
                            column,
                            "ROWS_DISAGREE",
                            "'" + column + "' differs from line " + first.line() + " of the same code "
                                    + row.cell("code") + "; give every row of a code the same"));
                }
            }
            fixed(list, row, known, problems);
        }
    }

    private static void fixed(SetUpList list, Row row, Known known, List<LineProblem> problems) {
        String code = row.cell("code");
        boolean used = known.present().values().stream()
                .anyMatch(there -> there.get("code").equals(code));
        Map<String, String> there = known.present().get(list.keyOf(row.cells()));
        if (used && (there == null || !SetUpRules.says(list, row, there))) {
            problems.add(new LineProblem(
                    row.line(),
                    "code",
                    "CODE_FIXED",
                    "'" + code + "' is set up and reports may rest on it, so what it says no longer changes; give the"
                            + " new figures a code of their own"));
        }
    }

    /** A set of test performance says either both fractions or all four counts, and a test that is better than chance. */
    static void performance(Row row, List<LineProblem> problems) {
        boolean fractions = all(row, FRACTIONS) && none(row, COUNTS);
        boolean counts = all(row, COUNTS) && none(row, FRACTIONS);
        if (!fractions && !counts) {
            problems.add(new LineProblem(
                    row.line(),
                    "sensitivity",
                    "FRACTIONS_OR_COUNTS",
                    "Give both 'sensitivity' and 'specificity', which are then taken as known, or all four counts of the"
                            + " study ('" + String.join("', '", COUNTS)
                            + "'), whose own uncertainty then enters the interval; not both, not parts"));
            return;
        }
        if (counts
                && !(within(row, COUNTS.get(1), COUNTS.get(0), problems)
                        & within(row, COUNTS.get(3), COUNTS.get(2), problems))) {
            return;
        }
        double sensitivity =
                fractions ? number(row, "sensitivity") : number(row, COUNTS.get(1)) / number(row, COUNTS.get(0));
        double specificity =
                fractions ? number(row, "specificity") : number(row, COUNTS.get(3)) / number(row, COUNTS.get(2));
        if (!PerformanceSet.isBetterThanChance(sensitivity, specificity)) {
            problems.add(new LineProblem(
                    row.line(),
                    fractions ? "sensitivity" : COUNTS.get(1),
                    "NO_BETTER_THAN_CHANCE",
                    String.format(
                            Locale.ROOT,
                            "Sensitivity %.3f and specificity %.3f together are not above 1: such a test tells infected"
                                    + " animals from others no better than chance; check both figures",
                            sensitivity,
                            specificity)));
        }
    }

    private static boolean within(Row row, String part, String whole, List<LineProblem> problems) {
        if (number(row, part) <= number(row, whole)) {
            return true;
        }
        problems.add(new LineProblem(
                row.line(),
                part,
                "MORE_THAN_ALL",
                "'" + part + "' " + row.cell(part) + " is more than '" + whole + "' " + row.cell(whole)
                        + "; check both counts"));
        return false;
    }

    private static double number(Row row, String column) {
        return Double.parseDouble(row.cell(column));
    }

    private static boolean all(Row row, List<String> columns) {
        return columns.stream().noneMatch(column -> row.cell(column).isEmpty());
    }

    private static boolean none(Row row, List<String> columns) {
        return columns.stream().allMatch(column -> row.cell(column).isEmpty());
    }
}
