package org.dentary.plan.setting;

import java.math.BigDecimal;
import java.time.MonthDay;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * All settings as they are at one moment, read once and asked often. Of the values that hold for a season, region and
 * unit the most specific wins (unit, then region, then season); without any, the setting's default.
 */
public final class PlanSettings {
    private final Map<String, List<SettingRow>> rows;

    public PlanSettings(List<SettingRow> rows) {
        this.rows = rows.stream().collect(Collectors.groupingBy(SettingRow::name));
    }

    /**
     * The value as text.
     *
     * @param season season code or null
     * @param region region code or null
     * @param unit management unit code or null
     */
    public String text(PlanSetting setting, String season, String region, String unit) {
        return rows.getOrDefault(setting.name(), List.of()).stream()
                .filter(row -> row.holdsFor(season, region, unit))
                .max(Comparator.comparingInt(SettingRow::specificity))
                .map(SettingRow::value)
                .orElse(setting.byDefault());
    }

    /** The value that holds where no season, region or unit says otherwise. */
    public String everywhere(PlanSetting setting) {
        return text(setting, null, null, null);
    }

    /** The value of a setting that is a whole number. */
    public int wholeNumber(PlanSetting setting, String season, String region, String unit) {
        return Integer.parseInt(text(setting, season, region, unit));
    }

    /** The value of a setting that is a share, in [0, 1]. */
    public BigDecimal share(PlanSetting setting, String season, String region, String unit) {
        return new BigDecimal(text(setting, season, region, unit));
    }

    /** The value of a setting that is yes or no. */
    public boolean isSet(PlanSetting setting, String season, String region, String unit) {
        return Boolean.parseBoolean(text(setting, season, region, unit));
    }

    /** The value of a setting that is a day of every year. */
    public MonthDay monthDay(PlanSetting setting, String season, String region, String unit) {
        return MonthDay.parse("--" + text(setting, season, region, unit));
    }

    /**
     * Two numbers, both within.
     *
     * @param from the smaller
     * @param to the greater
     */
    public record Span(BigDecimal from, BigDecimal to) {}

    /** The value of a setting that is a span of numbers. */
    public Span span(PlanSetting setting, String season, String region, String unit) {
        String[] ends = text(setting, season, region, unit).split("-");
        return new Span(new BigDecimal(ends[0]), new BigDecimal(ends[1]));
    }

    /** The value of a setting that is a list of codes; empty if it names none. */
    public List<String> codes(PlanSetting setting, String season, String region, String unit) {
        String text = text(setting, season, region, unit);
        return text.isBlank() ? List.of() : List.of(text.trim().split("\\s+"));
    }
}
