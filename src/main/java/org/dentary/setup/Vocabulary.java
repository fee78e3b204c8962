package org.dentary.setup;

import java.util.Arrays;
import java.util.List;
import org.dentary.cautions.Hazard;
import org.dentary.plan.PlanSetting;
import org.dentary.platform.account.Role;

/** The coded values that set-up files use. */
final class Vocabulary {
    static final List<String> TISSUES = List.of(
            "MEDIAL_RETROPHARYNGEAL_NODE",
            "LATERAL_RETROPHARYNGEAL_NODE",
            "PAROTID_NODE",
            "SUBMANDIBULAR_NODE",
            "OBEX",
            "TONSIL",
            "RECTAL_MUCOSA",
            "EAR",
            "INCISOR",
            "SPLEEN",
            "LUNG",
            "BLOOD",
            "WHOLE_HEAD",
            "OTHER");
    static final List<String> SIDES = List.of("LEFT", "RIGHT", "BOTH", "NONE", "UNKNOWN");
    static final List<String> PRESERVATIONS = List.of("FRESH_CHILLED", "FROZEN", "FORMALIN", "DRY", "ETHANOL", "OTHER");
    static final List<String> ROLES = names(Role.values());
    static final List<String> SETTINGS = names(PlanSetting.values());
    static final List<String> HAZARDS = names(Hazard.values());

    private Vocabulary() {}

    private static List<String> names(Enum<?>[] values) {
        return Arrays.stream(values).map(Enum::name).toList();
    }
}
