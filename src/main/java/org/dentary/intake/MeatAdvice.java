package org.dentary.intake;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;

/** What whoever stands at the table answers when a hunter asks about the meat: the health agency's words, never their own. */
@RequestScoped
@Named("meat")
public class MeatAdvice {
    private final PlanService plan;

    MeatAdvice(PlanService plan) {
        this.plan = plan;
    }

    /** The agency's current advice word for word; empty where the plan has none. */
    public String advice() {
        return plan.settings().everywhere(PlanSetting.HEALTH_AGENCY_ADVICE);
    }

    /** Who advises; empty where the plan does not say. */
    public String agency() {
        return plan.settings().everywhere(PlanSetting.HEALTH_AGENCY);
    }

    /** The agency's number as it is written; empty for none. */
    public String phone() {
        return plan.settings().everywhere(PlanSetting.HEALTH_AGENCY_NUMBER);
    }

    /** The number as a telephone dials it. */
    public String dial() {
        return phone().replaceAll("\\(.*", "").replaceAll("[^+0-9]", "");
    }
}
