package org.dentary.setup.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.problem.FieldProblem;

/** A setting as typed on the season's page; each text is as given, never null. */
record SeasonForm(String setting, String value, String season, String region, String unit) {
    static final SeasonForm BLANK = new SeasonForm("", "", "", "", "");

    SeasonForm {
        setting = text(setting);
        value = text(value);
        season = text(season);
        region = text(region);
        unit = text(unit);
    }

    Optional<PlanSetting> chosen() {
        return Arrays.stream(PlanSetting.values())
                .filter(one -> one.name().equals(setting))
                .findFirst();
    }

    List<FieldProblem> faults() {
        List<FieldProblem> faults = new ArrayList<>();
        if (chosen().isEmpty()) {
            faults.add(new FieldProblem("setting", "REQUIRED", "Choose the setting to change"));
        } else if (!chosen().get().allows(value)) {
            faults.add(new FieldProblem(
                    "value",
                    "INVALID_VALUE",
                    "'" + value + "' is not allowed for " + setting + "; allowed: "
                            + chosen().get().allowed()));
        }
        return faults;
    }

    /** A scope as stored: what was left blank holds everywhere. */
    static String scope(String given) {
        return given.isEmpty() ? null : given;
    }

    private static String text(String given) {
        return given == null ? "" : given.strip().replace("\r\n", "\n");
    }
}
