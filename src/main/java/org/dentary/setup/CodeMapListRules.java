package org.dentary.setup;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.dentary.result.mapping.CodeMapRules;
import org.dentary.setup.SetUpRules.Row;
import org.dentary.setup.list.Known;
import org.dentary.setup.list.SetUpList;

/** What the rows of code maps must say together: known words, whole editions, one after another, none written over. */
final class CodeMapListRules {
    private CodeMapListRules() {}

    /** Adds what is wrong with the lines, in their order. */
    static void check(List<Row> rows, Known known, List<LineProblem> problems) {
        Map<String, Set<String>> words = CodeMapRules.words(
                known.codes().getOrDefault(SetUpList.METHODS, Set.of()),
                known.codes().getOrDefault(SetUpList.LABORATORIES, Set.of()));
        rows.forEach(row -> word(row, words.get(row.cell("field")), problems));
        Map<String, Row> editions = new TreeMap<>();
        rows.forEach(row -> day(row, editions.putIfAbsent(name(row), row), problems));
        Map<String, Integer> newest = new HashMap<>();
        Set<String> there = new TreeSet<>();
        known.present().values().forEach(row -> {
            there.add(row.get("laboratory") + " " + row.get("edition"));
            newest.merge(row.get("laboratory"), Integer.parseInt(row.get("edition")), Math::max);
        });
        rows.stream().filter(row -> there.contains(name(row))).forEach(row -> kept(row, known, newest, problems));
        Map<String, TreeMap<Integer, Row>> fresh = new TreeMap<>();
        editions.values().stream()
                .filter(row -> !there.contains(name(row)))
                .forEach(row -> fresh.computeIfAbsent(row.cell("laboratory"), any -> new TreeMap<>())
                        .put(Integer.parseInt(row.cell("edition")), row));
        fresh.forEach((laboratory, ofIt) -> inTurn(laboratory, ofIt, newest.getOrDefault(laboratory, 0), problems));
    }

    private static String name(Row row) {
        return row.cell("laboratory") + " " + row.cell("edition");
    }

    private static void word(Row row, Set<String> allowed, List<LineProblem> problems) {
        if (!allowed.contains(row.cell("ours"))) {
            problems.add(new LineProblem(
                    row.line(),
                    "ours",
                    "WORD_UNKNOWN",
                    "'" + row.cell("ours") + "' is no word for " + row.cell("field") + "; one of "
                            + String.join(", ", new TreeSet<>(allowed))));
        }
    }

    private static void day(Row row, Row first, List<LineProblem> problems) {
        if (first != null && !first.cell("in_force_from").equals(row.cell("in_force_from"))) {
            problems.add(new LineProblem(
                    row.line(),
                    "in_force_from",
                    "ROWS_DISAGREE",
                    "'in_force_from' differs from line " + first.line()
                            + " of the same edition; an edition begins on one" + " day"));
        }
    }

    private static void kept(Row row, Known known, Map<String, Integer> newest, List<LineProblem> problems) {
        Map<String, String> there = known.present().get(SetUpList.CODE_MAPS.keyOf(row.cells()));
        if (there == null || !SetUpRules.says(SetUpList.CODE_MAPS, row, there)) {
            problems.add(new LineProblem(
                    row.line(),
                    "edition",
                    "EDITION_WRITTEN",
                    "Edition " + row.cell("edition") + " of " + row.cell("laboratory")
                            + " is kept, as messages were read by it, and says otherwise; give the whole map as edition "
                            + (newest.get(row.cell("laboratory")) + 1)));
        }
    }

    private static void inTurn(String laboratory, TreeMap<Integer, Row> fresh, int newest, List<LineProblem> problems) {
        int next = newest + 1;
        for (Map.Entry<Integer, Row> edition : fresh.entrySet()) {
            if (edition.getKey() != next) {
                problems.add(new LineProblem(
                        edition.getValue().line(),
                        "edition",
                        "EDITION_NOT_NEXT",
                        "The next edition of " + laboratory + " is " + next + ", not " + edition.getKey()));
                return;
            }
            next++;
        }
    }
}
