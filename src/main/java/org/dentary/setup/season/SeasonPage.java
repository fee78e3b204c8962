package org.dentary.setup.season;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.plan.RegionView;
import org.dentary.plan.SeasonView;
import org.dentary.plan.UnitView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.SettingRow;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.setup.list.SetUpList;

/** Everything the season's page shows. */
record SeasonPage(
        List<SeasonView> seasons,
        List<FieldProblem> missing,
        List<ListRow> lists,
        List<SettingLine> settings,
        List<RegionView> regions,
        List<UnitView> units,
        SeasonForm form,
        Faults faults) {

    /** A list and how many rows it has. */
    record ListRow(SetUpList list, int rows) {
        static List<ListRow> of(Map<SetUpList, Integer> counts) {
            return Arrays.stream(SetUpList.values())
                    .map(list -> new ListRow(list, counts.getOrDefault(list, 0)))
                    .toList();
        }
    }

    /** A setting and where the plan says otherwise than the default. */
    record SettingLine(PlanSetting setting, String byDefault, List<SettingRow> values) {
        static List<SettingLine> of(List<SettingRow> rows) {
            Map<String, List<SettingRow>> byName = rows.stream().collect(Collectors.groupingBy(SettingRow::name));
            return Arrays.stream(PlanSetting.values())
                    .map(setting -> new SettingLine(
                            setting,
                            setting.byDefault().isEmpty() ? "none" : setting.byDefault(),
                            byName.getOrDefault(setting.name(), List.of())))
                    .toList();
        }

        public String name() {
            return setting.name();
        }

        public String words() {
            String text = setting.name().replace('_', ' ').toLowerCase(java.util.Locale.ROOT);
            return Character.toUpperCase(text.charAt(0)) + text.substring(1);
        }
    }
}
