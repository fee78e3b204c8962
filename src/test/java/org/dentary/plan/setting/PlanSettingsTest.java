package org.dentary.plan.setting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.MonthDay;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PlanSettingsTest {
    @Test
    void theMostSpecificValueWins() {
        PlanSettings settings = new PlanSettings(List.of(
                row("06-02", null, null, null),
                row("06-03", "S1", null, null),
                row("06-04", null, "SOUTH", null),
                row("06-05", "S1", "SOUTH", null),
                row("06-06", null, null, "U9")));
        assertEquals("06-02", peak(settings, "S2", "NORTH", "U1"));
        assertEquals("06-03", peak(settings, "S1", "NORTH", "U1"));
        assertEquals("06-04", peak(settings, "S2", "SOUTH", "U1"));
        assertEquals("06-05", peak(settings, "S1", "SOUTH", null));
        assertEquals("06-06", peak(settings, "S1", "SOUTH", "U9"));
        assertEquals("06-02", peak(settings, null, null, null));
    }

    @Test
    void withoutAValueTheDefaultHolds() {
        PlanSettings settings = new PlanSettings(List.of());
        assertEquals(MonthDay.of(6, 1), settings.monthDay(PlanSetting.BIOLOGICAL_YEAR_START, null, null, null));
        assertEquals(12, settings.wholeNumber(PlanSetting.CUSTODY_LATE_HOURS, "S1", null, null));
        assertEquals(new BigDecimal("0.05"), settings.share(PlanSetting.BLIND_SECOND_READING_SHARE, null, null, null));
        assertFalse(settings.isSet(PlanSetting.SCREENING_ALONE_DETECTS, null, null, "U1"));
        assertEquals(List.of(), settings.codes(PlanSetting.RELEASE_DEPUTIES, null, null, null));
    }

    @ParameterizedTest
    @EnumSource(PlanSetting.class)
    void everyDefaultIsAllowed(PlanSetting setting) {
        assertTrue(setting.allows(setting.byDefault()), setting.name());
        assertFalse(setting.meaning().isBlank());
    }

    @ParameterizedTest
    @CsvSource({
        "BIRTH_PULSE_PEAK, 02-29, false",
        "BIRTH_PULSE_PEAK, 13-01, false",
        "BIRTH_PULSE_PEAK, 6-1, false",
        "BIRTH_PULSE_PEAK, 12-31, true",
        "CLOCK_SKEW_MINUTES, 121, false",
        "CLOCK_SKEW_MINUTES, -1, false",
        "CLOCK_SKEW_MINUTES, 0, true",
        "CLOCK_SKEW_MINUTES, 1.5, false",
        "DESIGN_PREVALENCE, 1.01, false",
        "DESIGN_PREVALENCE, 1%, false",
        "DESIGN_PREVALENCE, 0.002, true",
        "SCREENING_ALONE_DETECTS, yes, false",
        "PROTOCOL_REVIEWED_ON, 2026-02-30, false",
        "PROTOCOL_REVIEWED_ON, 2026-02-28, true",
        "FIELD_DRESSED_KILOGRAMS_FAWN, 10-45, true",
        "FIELD_DRESSED_KILOGRAMS_FAWN, 27.5-80, true",
        "FIELD_DRESSED_KILOGRAMS_FAWN, 45-10, false",
        "FIELD_DRESSED_KILOGRAMS_FAWN, 10-10, false",
        "FIELD_DRESSED_KILOGRAMS_FAWN, 0-45, false",
        "FIELD_DRESSED_KILOGRAMS_FAWN, 10-301, false",
        "FIELD_DRESSED_KILOGRAMS_FAWN, 10, false",
        "RELEASE_DEPUTIES, 'a, b', false",
        "RELEASE_DEPUTIES, 'ana ben', true"
    })
    void aSettingTakesWhatItsKindTakes(PlanSetting setting, String value, boolean allowed) {
        assertEquals(allowed, setting.allows(value));
    }

    private static SettingRow row(String value, String season, String region, String unit) {
        return new SettingRow(PlanSetting.BIRTH_PULSE_PEAK.name(), value, season, region, unit);
    }

    private static String peak(PlanSettings settings, String season, String region, String unit) {
        return settings.text(PlanSetting.BIRTH_PULSE_PEAK, season, region, unit);
    }
}
