package org.dentary.jaw;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.AgeingPlan;
import org.dentary.jaw.key.JawContext;
import org.dentary.jaw.key.JawObservation;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.SpeciesView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;

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
                set.monthDay(PlanSetting.ANTLERS_SHED_FROM, season, region, unit),
                set.monthDay(PlanSetting.ANTLERS_SHED_TO, season, region, unit),
                set.wholeNumber(PlanSetting.FRESH_JAW_DAYS, season, region, unit),
                set.wholeNumber(PlanSetting.FAWN_FETUS_MILLIMETRES, season, region, unit),
                massBands(set, season, region, unit),
                set.isSet(PlanSetting.PROBABLE_NEEDS_SECOND_READER, season, region, unit),
                reviewed(plan.species()));
    }

    private static List<AgeingPlan.MassBand> massBands(PlanSettings set, String season, String region, String unit) {
        return List.of(
                band(AgeClass.FAWN, null, set.span(PlanSetting.FIELD_DRESSED_KILOGRAMS_FAWN, season, region, unit)),
                band(
                        AgeClass.YEARLING,
                        JawContext.Sex.FEMALE,
                        set.span(PlanSetting.FIELD_DRESSED_KILOGRAMS_YEARLING_FEMALE, season, region, unit)),
                band(
                        AgeClass.YEARLING,
                        JawContext.Sex.MALE,
                        set.span(PlanSetting.FIELD_DRESSED_KILOGRAMS_YEARLING_MALE, season, region, unit)),
                band(
                        AgeClass.ADULT,
                        JawContext.Sex.FEMALE,
                        set.span(PlanSetting.FIELD_DRESSED_KILOGRAMS_ADULT_FEMALE, season, region, unit)),
                band(
                        AgeClass.ADULT,
                        JawContext.Sex.MALE,
                        set.span(PlanSetting.FIELD_DRESSED_KILOGRAMS_ADULT_MALE, season, region, unit)));
    }

    private static AgeingPlan.MassBand band(AgeClass ageClass, JawContext.Sex sex, PlanSettings.Span kilograms) {
        return new AgeingPlan.MassBand(
                ageClass, sex, kilograms.from().doubleValue(), kilograms.to().doubleValue());
    }

    /**
     * What holds for a deer of which only the day of death may be known.
     *
     * @param diedOn null takes what holds in every season
     * @param region region code; null takes what holds everywhere
     */
    public AgeingPlan on(LocalDate diedOn, String region) {
        String season = diedOn == null
                ? null
                : plan.seasonOn(diedOn).map(SeasonView::code).orElse(null);
        return of(season, region, null);
    }

    /** The key is made for white-tailed deer; until the plan lists that species, it needs no further word to be used. */
    private static Set<String> reviewed(List<SpeciesView> species) {
        Set<String> reviewed = species.stream()
                .filter(SpeciesView::keyReviewed)
                .map(SpeciesView::code)
                .collect(Collectors.toSet());
        if (species.stream().noneMatch(one -> one.code().equals(JawObservation.DEFAULT_SPECIES))) {
            reviewed.add(JawObservation.DEFAULT_SPECIES);
        }
        return reviewed;
    }
}
