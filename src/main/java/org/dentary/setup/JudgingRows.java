package org.dentary.setup;

import java.util.List;
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

    private JudgingRows() {}

    /** Those that are new or differ from what is set up, in the file's order; of most lists none ever do. */
    static List<Row> of(SetUpList list, List<Row> rows, Known known) {
        return switch (list) {
            case SETTINGS ->
                rows.stream()
                        .filter(row -> SETTINGS.contains(row.cell("name")) && differs(list, row, known, "value", true))
                        .toList();
            case METHODS ->
                rows.stream()
                        .filter(row -> differs(list, row, known, "accepted_tissues", false))
                        .toList();
            case UNITS ->
                rows.stream()
                        .filter(row -> differs(list, row, known, "region", false))
                        .toList();
            default -> List.of();
        };
    }

    /** Warns at each of them that posting changes outcomes of animals that were judged. */
    static void warn(SetUpList list, List<Row> rows, Known known, List<LineProblem> warnings) {
        of(list, rows, known)
                .forEach(
                        row -> warnings.add(
                                new LineProblem(
                                        row.line(),
                                        list == SetUpList.SETTINGS
                                                ? "value"
                                                : list == SetUpList.UNITS ? "region" : "accepted_tissues",
                                        "OUTCOMES_JUDGED_ANEW",
                                        "Posting this derives anew the outcome of every animal it holds for, past seasons included; who was told of an outcome that changes is to be told again")));
    }

    private static boolean differs(SetUpList list, Row row, Known known, String column, boolean whereNew) {
        var there = known.present().get(list.keyOf(row.cells()));
        return there == null ? whereNew : !there.getOrDefault(column, "").equals(row.cell(column));
    }
}
