package org.dentary.setup.list;

import java.util.Arrays;
import java.util.List;
import org.dentary.animal.MortalitySource;
import org.dentary.cautions.Hazard;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.account.Role;
import org.dentary.prevalence.performance.PerformanceSet;
import org.dentary.specimen.Preservation;
import org.dentary.specimen.Side;
import org.dentary.specimen.Tissue;

/** The coded values that set-up files use. */
public final class Vocabulary {
    static final List<String> TISSUES = names(Tissue.values());
    static final List<String> SIDES = names(Side.values());
    static final List<String> PRESERVATIONS = names(Preservation.values());
    static final List<String> ROLES = names(Role.values());
    static final List<String> SETTINGS = names(PlanSetting.values());
    static final List<String> SOURCES = names(MortalitySource.values());
    public static final List<String> AGE_CLASSES = List.of("FAWN", "YEARLING", "ADULT");
    static final List<String> SEXES = List.of("MALE", "FEMALE");
    static final List<String> PERFORMANCE_KINDS = names(PerformanceSet.Kind.values());
    static final List<String> SOURCES_SEEN = names(PerformanceSet.Seen.values());
    static final List<String> HAZARDS = names(Hazard.values());

    private Vocabulary() {}

    private static List<String> names(Enum<?>[] values) {
        return Arrays.stream(values).map(Enum::name).toList();
    }
}
