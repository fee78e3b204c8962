package org.dentary.setup;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.dentary.setup.list.Boundary;
import org.dentary.setup.list.Cell;
import org.dentary.setup.list.Column;
import org.dentary.setup.list.Known;
import org.dentary.setup.list.SetUpList;

/**
 * Holds a file against the list it is for and against what is set up already. A column that the file leaves out keeps what
 * is there; a cell left empty empties it (or means the column's default).
 */
final class SetUpRules {
    private SetUpRules() {}

    /**
     * What a file comes to.
     *
     * @param rows rows that can be written, by column; complete only if there are no problems
     * @param problems what forbids posting, by line
     * @param warnings what does not forbid it but should be looked at
     */
    record Checked(List<Row> rows, List<LineProblem> problems, List<LineProblem> warnings) {}

    /** One row with the line it came from. */
    record Row(int line, Map<String, String> cells) {
        String cell(String column) {
            return cells.getOrDefault(column, "");
        }
    }

    /** The rows of a file with what is wrong or unusual in it; no rows where its header is wrong. */
    static Checked check(SetUpList list, RawTable table, Known known) {
        List<LineProblem> problems = new ArrayList<>(headerProblems(list, table.header()));
        List<LineProblem> warnings = new ArrayList<>();
        if (!problems.isEmpty()) {
            return new Checked(List.of(), problems, warnings);
        }
        List<Row> rows = new ArrayList<>();
        Map<String, Integer> firstLines = new LinkedHashMap<>();
        for (RawTable.Line line : table.lines()) {
            if (line.cells().size() != table.header().size()) {
                problems.add(new LineProblem(
                        line.number(),
                        "",
                        "CELL_COUNT",
                        "This line has " + line.cells().size() + " cells, the header has "
                                + table.header().size()
                                + "; give each column one cell and put text that holds a comma in quotes"));
                continue;
            }
            Row row = row(list, table.header(), line, known);
            List<LineProblem> faults = cellProblems(list, row, known);
            Integer first = firstLines.putIfAbsent(list.keyOf(row.cells()), row.line());
            if (first != null) {
                faults.add(new LineProblem(
                        row.line(),
                        list.key().get(0),
                        "TWICE_IN_FILE",
                        "'" + list.keyOf(row.cells()) + "' stands in line " + first + " already; give it once"));
            }
            problems.addAll(faults);
            if (faults.isEmpty()) {
                rows.add(row);
            }
        }
        ListRules.check(list, rows, known, problems, warnings);
        problems.sort((a, b) -> Integer.compare(a.line(), b.line()));
        return new Checked(rows, problems, warnings);
    }

    private static List<LineProblem> headerProblems(SetUpList list, List<String> header) {
        List<LineProblem> problems = new ArrayList<>();
        List<String> allowed = list.header();
        Set<String> seen = new java.util.HashSet<>();
        for (String column : header) {
            if (!allowed.contains(column)) {
                problems.add(new LineProblem(
                        1,
                        column,
                        "COLUMN_UNKNOWN",
                        "'" + column + "' is no column of " + list.path() + "; allowed: "
                                + String.join(", ", allowed)));
            } else if (!seen.add(column)) {
                problems.add(new LineProblem(
                        1, column, "COLUMN_TWICE", "'" + column + "' stands twice in the header; keep one"));
            }
        }
        for (Column column : list.columns()) {
            if (column.required() && !header.contains(column.name())) {
                problems.add(new LineProblem(
                        1,
                        column.name(),
                        "COLUMN_MISSING",
                        "The header lacks '" + column.name() + "' (" + column.meaning() + "); add the column"));
            }
        }
        return problems;
    }

    private static Row row(SetUpList list, List<String> header, RawTable.Line line, Known known) {
        Map<String, String> given = new LinkedHashMap<>();
        for (int i = 0; i < header.size(); i++) {
            given.put(header.get(i), line.cells().get(i));
        }
        Map<String, String> there = known.present().getOrDefault(list.keyOf(given), Map.of());
        Map<String, String> cells = new LinkedHashMap<>();
        for (Column column : list.columns()) {
            String cell = given.containsKey(column.name())
                    ? given.get(column.name())
                    : there.getOrDefault(column.name(), column.byDefault());
            cells.put(column.name(), cell.isEmpty() ? column.byDefault() : cell);
        }
        return new Row(line.number(), cells);
    }

    private static List<LineProblem> cellProblems(SetUpList list, Row row, Known known) {
        List<LineProblem> problems = new ArrayList<>();
        for (Column column : list.columns()) {
            String cell = row.cell(column.name());
            if (cell.isEmpty()) {
                if (column.required()) {
                    problems.add(new LineProblem(
                            row.line(),
                            column.name(),
                            "REQUIRED",
                            "'" + column.name() + "' is empty; give " + column.allowed()));
                }
            } else if (!column.cell().allows().test(cell, known)) {
                problems.add(new LineProblem(
                        row.line(),
                        column.name(),
                        "INVALID_VALUE",
                        shown(column, cell) + " is not allowed for '" + column.name() + "'; allowed: "
                                + column.allowed() + why(column, cell) + first(column, known)));
            }
        }
        return problems;
    }

    private static String shown(Column column, String cell) {
        if (column.cell() == Cell.PASSWORD) {
            return "This password";
        }
        return "'" + (cell.length() > 60 ? cell.substring(0, 60) + "…" : cell) + "'";
    }

    /** What to do before this file, where the list that a cell refers to holds nothing. */
    private static String first(Column column, Known known) {
        SetUpList from = column.cell().from();
        return from == null || !known.lacks(from)
                ? ""
                : ". " + from.words() + " are not set up yet: send that file first";
    }

    private static String why(Column column, String cell) {
        return column.cell() == Cell.BOUNDARY
                ? Boundary.fault(cell).map(fault -> " (" + fault + ")").orElse("")
                : "";
    }

    /** How many rows are new, how many change what is there, how many say what is there already. */
    static Effect effect(SetUpList list, List<Row> rows, Known known) {
        int adds = 0;
        int changes = 0;
        for (Row row : rows) {
            Map<String, String> there = known.present().get(list.keyOf(row.cells()));
            if (there == null
                    || list == SetUpList.BOUNDARIES && there.get("boundary").isEmpty()) {
                adds++;
            } else if (!says(list, row, there)) {
                changes++;
            }
        }
        return new Effect(adds, changes, rows.size() - adds - changes);
    }

    /** Whether a row says what is there: the same in every cell, 0.960 the same as 0.96. */
    static boolean says(SetUpList list, Row row, Map<String, String> there) {
        return list.columns().stream()
                .allMatch(column -> column.cell().same(row.cell(column.name()), there.getOrDefault(column.name(), "")));
    }

    /** What posting would do. */
    record Effect(int adds, int changes, int same) {}

    /**
     * The place of each row of the file in set-up order. A file that names everything that is there sets the order; else
     * what is there keeps its place and what is new follows.
     */
    static Map<String, Integer> positions(SetUpList list, List<Row> rows, Known known) {
        List<String> inFile = rows.stream().map(row -> list.keyOf(row.cells())).toList();
        List<String> order = new ArrayList<>();
        if (!inFile.containsAll(known.present().keySet())) {
            order.addAll(known.present().keySet());
        }
        Set<String> placed = new java.util.HashSet<>(order);
        order.addAll(inFile.stream().filter(key -> !placed.contains(key)).collect(Collectors.toList()));
        Map<String, Integer> positions = new LinkedHashMap<>();
        for (String key : order) {
            positions.put(key, positions.size() + 1);
        }
        return positions;
    }
}
