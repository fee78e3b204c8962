package org.dentary.setup.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.plan.RegionView;
import org.dentary.plan.SeasonView;
import org.dentary.plan.UnitView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.SettingRow;
import org.dentary.platform.page.Faults;

/** Everything the page of the plan's settings shows. */
record SettingsPage(
        List<Subject> subjects,
        List<SeasonView> seasons,
        List<RegionView> regions,
        List<UnitView> units,
        SeasonForm form,
        Line chosen,
        Line changed,
        Faults faults) {

    /** The first setting of each subject, in the order in which the settings stand. */
    private static final Map<PlanSetting, String> BEGINNINGS = Map.ofEntries(
            Map.entry(PlanSetting.LOW_KIT_STOCK, "Kits"),
            Map.entry(PlanSetting.BIRTH_PULSE_START, "Births, teeth and size"),
            Map.entry(PlanSetting.PROBABLE_NEEDS_SECOND_READER, "Second readings and practice"),
            Map.entry(PlanSetting.UNKNOWN_AGE_NOTE_SHARE, "Reports"),
            Map.entry(PlanSetting.DESIGN_PREVALENCE, "Chance of detection"),
            Map.entry(PlanSetting.CUSTODY_LATE_HOURS, "Custody"),
            Map.entry(PlanSetting.CHILLED_LOWEST_CELSIUS, "Temperatures"),
            Map.entry(PlanSetting.SCREENING_ALONE_DETECTS, "Outcomes and their release"),
            Map.entry(PlanSetting.CONTACT_DAYS, "How long things are kept"),
            Map.entry(PlanSetting.PROTOCOL_VERSION, "Protocol"),
            Map.entry(PlanSetting.EMERGENCY_NUMBER, "Emergency numbers"),
            Map.entry(PlanSetting.DISEASES_ESTABLISHED, "Detections and telling people"));

    /** Settings that belong together, in the plan's order. */
    record Subject(String words, List<Line> lines) {
        public String id() {
            return words.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-");
        }

        static List<Subject> of(List<SettingRow> rows) {
            Map<String, List<SettingRow>> byName = rows.stream().collect(Collectors.groupingBy(SettingRow::name));
            List<Subject> subjects = new ArrayList<>();
            for (PlanSetting setting : PlanSetting.values()) {
                if (BEGINNINGS.containsKey(setting)) {
                    subjects.add(new Subject(BEGINNINGS.get(setting), new ArrayList<>()));
                }
                subjects.get(subjects.size() - 1)
                        .lines()
                        .add(new Line(setting, byName.getOrDefault(setting.name(), List.of())));
            }
            return subjects;
        }
    }

    /** A setting and where the plan says otherwise than the default. */
    record Line(PlanSetting setting, List<SettingRow> values) {
        static Line of(PlanSetting setting, List<SettingRow> rows) {
            return new Line(
                    setting,
                    rows.stream()
                            .filter(row -> row.name().equals(setting.name()))
                            .toList());
        }

        public String name() {
            return setting.name();
        }

        public String words() {
            String text = setting.name().replace('_', ' ').toLowerCase(Locale.ROOT);
            return Character.toUpperCase(text.charAt(0)) + text.substring(1);
        }

        public String byDefault() {
            return setting.byDefault().isEmpty() ? "none" : setting.byDefault();
        }

        public String href() {
            return SettingsPage.href(name());
        }

        /** What holds everywhere, as the form shows it. */
        String everywhere() {
            return values.stream()
                    .filter(row -> row.season() == null && row.region() == null && row.unit() == null)
                    .map(SettingRow::value)
                    .findFirst()
                    .orElse(setting.byDefault());
        }
    }

    /** Where a setting is changed. */
    static String href(String setting) {
        return "/season/settings?setting=" + setting + "#change";
    }

    /** The setting of that name, or null. */
    static PlanSetting named(String name) {
        return Arrays.stream(PlanSetting.values())
                .filter(setting -> setting.name().equals(name))
                .findFirst()
                .orElse(null);
    }
}
