package org.dentary.plan.setting;

/**
 * One value of one setting.
 *
 * @param season season it holds for, or null for every season
 * @param region region it holds for, or null for every region
 * @param unit management unit it holds for, or null for every unit
 */
public record SettingRow(String name, String value, String season, String region, String unit) {
    boolean holdsFor(String season, String region, String unit) {
        return (this.season == null || this.season.equals(season))
                && (this.region == null || this.region.equals(region))
                && (this.unit == null || this.unit.equals(unit));
    }

    /** Unit before region before season before everywhere. */
    int specificity() {
        return (unit == null ? 0 : 4) + (region == null ? 0 : 2) + (season == null ? 0 : 1);
    }
}
