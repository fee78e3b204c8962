package org.dentary.plan.setting;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import org.dentary.plan.PlanService;
import org.dentary.platform.problem.InvalidInput;

/** Changes single settings of the plan; each change leaves the old value in the history. */
@ApplicationScoped
public class SettingService {
    private final SettingRepository settings;
    private final PlanService plan;

    SettingService(SettingRepository settings, PlanService plan) {
        this.settings = settings;
        this.plan = plan;
    }

    /**
     * Gives a setting a value.
     *
     * @param season season it holds for, or null for every one; so {@code region} and {@code unit}
     * @throws InvalidInput if the value is not allowed for the setting
     */
    @Transactional
    public void put(PlanSetting setting, String value, String season, String region, String unit) {
        if (!setting.allows(value)) {
            throw InvalidInput.field(
                    "value",
                    "INVALID_VALUE",
                    "'" + value + "' is not allowed for " + setting + "; allowed: " + setting.allowed());
        }
        SettingEntity there = settings.of(setting.name(), season, region, unit)
                .orElseGet(() -> new SettingEntity(setting.name(), season, region, unit));
        there.become(value);
        settings.persist(there);
        settings.flush();
    }

    /** Records that a person reviewed the protocol's edition in force. */
    @Transactional
    public void reviewProtocol(String person, LocalDate on) {
        put(PlanSetting.PROTOCOL_REVIEWED_BY, person, null, null, null);
        put(PlanSetting.PROTOCOL_REVIEWED_ON, on.toString(), null, null, null);
        put(
                PlanSetting.PROTOCOL_REVIEWED_VERSION,
                plan.settings().everywhere(PlanSetting.PROTOCOL_VERSION),
                null,
                null,
                null);
    }
}
