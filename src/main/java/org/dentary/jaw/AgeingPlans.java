package org.dentary.jaw;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.stream.Collectors;
import org.dentary.plan.PlanService;
import org.dentary.plan.PlanSetting;
import org.dentary.plan.PlanSettings;
import org.dentary.plan.SpeciesView;

/** The ageing plan in force, from the plan's dated settings; what the plan does not set is that of the northern herd. */
@ApplicationScoped
public class AgeingPlans {
    private final PlanService plan;

    AgeingPlans(PlanService plan) {
        this.plan = plan;
    }

    /**
     * The dates and limits by which jaws are judged there and then.
     *
     * @param season season code or null
     * @param region region code or null
     * @param unit management unit code or null
     */
    public AgeingPlan of(String season, String region, String unit) {
        PlanSettings set = plan.settings();
        AgeingPlan northern = AgeingPlan.NORTHERN;
        return new AgeingPlan(
                region == null ? northern.region() : region,
                set.monthDay(PlanSetting.BIRTH_PULSE_START, season, region, unit),
                set.monthDay(PlanSetting.BIRTH_PULSE_PEAK, season, region, unit),
                set.monthDay(PlanSetting.BIRTH_PULSE_END, season, region, unit),
                set.monthDay(PlanSetting.BIOLOGICAL_YEAR_START, season, region, unit),
                set.monthDay(PlanSetting.ERUPTING_SIXTH_TOOTH_FLAG_FROM, season, region, unit),
                set.monthDay(PlanSetting.MILK_TOOTH_UNUSUAL_AFTER, season, region, unit),
                set.monthDay(PlanSetting.FULL_THIRD_TOOTH_UNUSUAL_BEFORE, season, region, unit),
                set.monthDay(PlanSetting.FULL_FIFTH_TOOTH_UNUSUAL_BEFORE, season, region, unit),
                set.monthDay(PlanSetting.THREE_TEETH_UNUSUAL_AFTER, season, region, unit),
                northern.antlersShedFrom(),
                northern.antlersShedTo(),
                set.wholeNumber(PlanSetting.FRESH_JAW_DAYS, season, region, unit),
                northern.fawnFetusMillimetres(),
                northern.massBands(),
                set.isSet(PlanSetting.PROBABLE_NEEDS_SECOND_READER, season, region, unit),
                plan.species().stream()
                        .filter(SpeciesView::keyReviewed)
                        .map(SpeciesView::code)
                        .collect(Collectors.toSet()));
    }
}
