package org.dentary.setup;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.setup.SetUpRules.Row;
import org.dentary.setup.list.Known;
import org.dentary.setup.list.SetUpList;

/** Rows of a file that change by which rules outcomes are derived. */
final class JudgingRows {
    private static final Set<String> SETTINGS = Set.of(
            PlanSetting.SCREENING_ALONE_DETECTS.name(),
            PlanSetting.POOL_PASSES_TO_MEMBERS.name(),
            PlanSetting.ADJUNCT_METHODS_THAT_COUNT.name());
    private static final Map<SetUpList, String> COLUMN =
            Map.of(SetUpList.SETTINGS, "value", SetUpList.METHODS, "accepted_tissues", SetUpList.UNITS, "region");

    private JudgingRows() {}

    /** Those that differ from what is set up, in the file's order; of most lists none ever do. */
    static List<Row> of(SetUpList list, List<Row> rows, Known known) {
        return COLUMN.containsKey(list)
                ? rows.stream().filter(row -> isJudging(list, row, known)).toList()
                : List.of();
    }

    /** Warns at each of them that posting changes outcomes of animals that were judged. */
    static void warn(SetUpList list, List<Row> rows, Known known, List<LineProblem> warnings) {
        of(list, rows, known)
                .forEach(row -> warnings.add(new LineProblem(
                        row.line(),
                        COLUMN.get(list),
                        "OUTCOMES_JUDGED_ANEW",
                        "Posting this derives anew the outcome of every animal it holds for, past seasons included;"
                                + " who was told of an outcome that changes is to be told again")));
    }

    /** A setting that is new holds for animals that are there; a new method or unit has none. */
    private static boolean isJudging(SetUpList list, Row row, Known known) {
        if (list == SetUpList.SETTINGS && !SETTINGS.contains(row.cell("name"))) {
            return false;
        }
        Map<String, String> there = known.present().get(list.keyOf(row.cells()));
        String column = COLUMN.get(list);
        return there == null
                ? list == SetUpList.SETTINGS
                : !there.getOrDefault(column, "").equals(row.cell(column));
    }
}
