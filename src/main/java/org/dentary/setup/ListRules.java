package org.dentary.setup;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.setup.SetUpRules.Row;
import org.dentary.setup.list.Cell;
import org.dentary.setup.list.Known;
import org.dentary.setup.list.SetUpList;

/** What single lists ask of their rows beyond what a cell may hold. */
final class ListRules {
    private ListRules() {}

    /** Adds what is wrong, and what is only unusual, with lines whose cells are each allowed. */
    static void check(
            SetUpList list, List<Row> rows, Known known, List<LineProblem> problems, List<LineProblem> warnings) {
        switch (list) {
            case SEASONS -> seasons(rows, known, problems, warnings);
            case ACCEPTANCE, PROFILES -> rows.forEach(row -> inOrder(row, "in_force_from", "in_force_to", problems));
            case SETTINGS -> rows.forEach(row -> setting(row, problems));
            case CAUTIONS -> rows.forEach(row -> caution(row, known, problems));
            case ACCOUNTS -> accounts(rows, known, problems);
            case HERD_STRUCTURES -> ReferenceRules.wholeAndFixed(list, rows, known, problems);
            case TEST_PERFORMANCE -> {
                ReferenceRules.wholeAndFixed(list, rows, known, problems);
                rows.forEach(row -> ReferenceRules.performance(row, problems));
            }
            case CODE_MAPS -> CodeMapListRules.check(rows, known, problems);
            case AGEING_ERROR -> AgeingErrorRules.check(rows, known, problems);
            default -> {
                // its cells say all
            }
        }
        JudgingRows.warn(list, rows, known, warnings);
    }

    private static void seasons(List<Row> rows, Known known, List<LineProblem> problems, List<LineProblem> warnings) {
        List<Row> usable = rows.stream()
                .filter(row -> inOrder(row, "starts_on", "ends_on", problems))
                .toList();
        Map<String, Row> all = new LinkedHashMap<>();
        known.present().forEach((code, cells) -> all.put(code, new Row(0, cells)));
        for (Row row : usable) {
            Row there = all.put(row.cell("code"), row);
            boolean moved = there != null
                    && !(there.cell("starts_on").equals(row.cell("starts_on"))
                            && there.cell("ends_on").equals(row.cell("ends_on")));
            if (moved && known.fixedSeasons().contains(row.cell("code"))) {
                problems.add(new LineProblem(
                        row.line(),
                        "starts_on",
                        "SEASON_FIXED",
                        "Season " + row.cell("code") + " is open or closed and holds animals by its days "
                                + there.cell("starts_on") + " to " + there.cell("ends_on")
                                + "; its days no longer change"));
            }
        }
        List<Row> byStart = new ArrayList<>(all.values());
        byStart.sort(Comparator.comparing(row -> row.cell("starts_on")));
        for (int i = 1; i < byStart.size(); i++) {
            neighbors(byStart.get(i - 1), byStart.get(i), problems, warnings);
        }
    }

    private static void neighbors(Row earlier, Row later, List<LineProblem> problems, List<LineProblem> warnings) {
        int line = Math.max(earlier.line(), later.line());
        if (line == 0) {
            return;
        }
        LocalDate ends = LocalDate.parse(earlier.cell("ends_on"));
        LocalDate starts = LocalDate.parse(later.cell("starts_on"));
        String both = "Season " + later.cell("code") + " starts on " + starts + ", season " + earlier.cell("code")
                + " ends on " + ends;
        if (!starts.isAfter(ends)) {
            problems.add(new LineProblem(
                    line,
                    "starts_on",
                    "SEASONS_OVERLAP",
                    both + "; a day lies in one season only, so move one of them"));
        } else if (!starts.equals(ends.plusDays(1))) {
            warnings.add(new LineProblem(
                    line,
                    "starts_on",
                    "SEASONS_GAP",
                    both + "; an animal that died between them belongs to no season and enters no report"));
        }
    }

    private static boolean inOrder(Row row, String from, String to, List<LineProblem> problems) {
        if (row.cell(to).isEmpty() || row.cell(from).compareTo(row.cell(to)) <= 0) {
            return true;
        }
        problems.add(new LineProblem(
                row.line(),
                to,
                "DAYS_REVERSED",
                "'" + to + "' " + row.cell(to) + " lies before '" + from + "' " + row.cell(from)
                        + "; check both days"));
        return false;
    }

    private static void setting(Row row, List<LineProblem> problems) {
        PlanSetting setting = PlanSetting.valueOf(row.cell("name"));
        if (!setting.allows(row.cell("value"))) {
            problems.add(new LineProblem(
                    row.line(),
                    "value",
                    "INVALID_VALUE",
                    "'" + row.cell("value") + "' is not allowed for " + setting + "; allowed: " + setting.allowed()));
        }
    }

    private static void caution(Row row, Known known, List<LineProblem> problems) {
        if (row.cell("reviewed_by").isEmpty() != row.cell("reviewed_on").isEmpty()) {
            problems.add(new LineProblem(
                    row.line(),
                    "reviewed_by",
                    "REVIEW_INCOMPLETE",
                    "A review has a person and a day; give both 'reviewed_by' and 'reviewed_on', or neither"));
        }
        Map<String, String> there = known.present().get(row.cell("code") + " / " + row.cell("version"));
        if (there != null
                && !there.get("reviewed_by").isEmpty()
                && !there.get("text").equals(row.cell("text"))) {
            problems.add(new LineProblem(
                    row.line(),
                    "text",
                    "CAUTION_REVIEWED",
                    "Version " + row.cell("version") + " of " + row.cell("code")
                            + " was reviewed with another text; give the new text a higher version"));
        }
    }

    private static void accounts(List<Row> rows, Known known, List<LineProblem> problems) {
        Map<String, Map<String, String>> all = new LinkedHashMap<>(known.present());
        for (Row row : rows) {
            if (all.put(row.cell("username"), row.cells()) == null
                    && row.cell("password").isEmpty()) {
                problems.add(new LineProblem(
                        row.line(),
                        "password",
                        "REQUIRED",
                        "Account " + row.cell("username") + " is new and needs a password; give "
                                + Cell.PASSWORD.words()));
            }
        }
        boolean someoneCoordinates = all.values().stream()
                .anyMatch(account -> account.get("role").equals("COORDINATOR")
                        && account.get("active").equals("yes"));
        if (!someoneCoordinates && !rows.isEmpty()) {
            problems.add(new LineProblem(
                    rows.get(0).line(),
                    "role",
                    "LAST_COORDINATOR",
                    "After this file nobody could set up anything; keep at least one active COORDINATOR"));
        }
    }
}
