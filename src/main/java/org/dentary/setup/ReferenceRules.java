package org.dentary.setup;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dentary.setup.SetUpRules.Row;

/** Rules of lists whose code names several rows that are read as one thing and that reports rest on. */
final class ReferenceRules {
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
        if (used && !row.cells().equals(there)) {
            problems.add(new LineProblem(
                    row.line(),
                    "code",
                    "CODE_FIXED",
                    "'" + code + "' is set up and reports may rest on it, so what it says no longer changes; give the"
                            + " new figures a code of their own"));
        }
    }
}
