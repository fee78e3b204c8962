package org.dentary.prevalence.detection;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import org.dentary.plan.UnitView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.performance.PerformanceSet;
import org.dentary.prevalence.performance.PerformanceSets;
import org.dentary.statistics.detection.Detection;
import org.dentary.statistics.detection.Herd;
import org.dentary.statistics.detection.LargeHerd;
import org.dentary.statistics.detection.SampleSize;

/**
 * What the plan says for a unit and season, without which no figure here means anything.
 *
 * @param designPrevalence P*, in (0, 1]
 * @param targetProbability in (0, 1)
 * @param sensitivity of tissue and test among infected animals, in (0, 1]
 * @param sensitivitySource where the sensitivity is from; empty if the plan names nothing
 * @param herdSize animals of the species in the unit; null: not known, the herd counts as much larger than the sample
 * @param herdSizeSource where the herd size is from; may be empty
 * @param prior probability of a prevalence below P* before the first season, in [0, 1]
 * @param introductionRisk probability of P* being reached anew between two seasons, in [0, 1]
 * @param riskWeightSet set of weights in use; empty if animals count alike
 */
public record Assumptions(
        double designPrevalence,
        double targetProbability,
        double sensitivity,
        String sensitivitySource,
        Integer herdSize,
        String herdSizeSource,
        double prior,
        double introductionRisk,
        String riskWeightSet) {

    /**
     * Reads them from the plan.
     *
     * @param performances sets of test performance, one of which the plan may name instead of a sensitivity of its own
     * @throws InvalidInput (422) if the sensitivity is a relative one, or the set named does not fit disease and species
     */
    static Assumptions of(
            PlanSettings plan,
            String season,
            UnitView unit,
            PerformanceSets performances,
            String disease,
            String species) {
        String set = text(plan, PlanSetting.TEST_PERFORMANCE_SET, season, unit);
        if (set.isEmpty()) {
            refuseRelative(plan, season, unit);
            return of(
                    plan,
                    season,
                    unit,
                    share(plan, PlanSetting.TEST_SENSITIVITY, season, unit),
                    text(plan, PlanSetting.TEST_SENSITIVITY_SOURCE, season, unit));
        }
        PerformanceSet found = performances.require(PlanSetting.TEST_PERFORMANCE_SET.name(), set, disease, species);
        return of(
                plan,
                season,
                unit,
                found.sensitivity(),
                "set " + set + ", " + found.source() + "; " + found.getSeenWords());
    }

    private static void refuseRelative(PlanSettings plan, String season, UnitView unit) {
        if (text(plan, PlanSetting.TEST_SENSITIVITY_MEANS, season, unit).equals("RELATIVE")) {
            throw InvalidInput.field(
                    "TEST_SENSITIVITY",
                    "RELATIVE_SENSITIVITY",
                    "The plan's test sensitivity for unit " + unit.code()
                            + " is relative to another test: it says nothing"
                            + " about infected animals that both miss. Set TEST_SENSITIVITY to an animal-level one with its"
                            + " source, and TEST_SENSITIVITY_MEANS to ANIMAL_LEVEL");
        }
    }

    private static Assumptions of(
            PlanSettings plan, String season, UnitView unit, double sensitivity, String sensitivitySource) {
        String herd = text(plan, PlanSetting.HERD_SIZE, season, unit);
        return new Assumptions(
                share(plan, PlanSetting.DESIGN_PREVALENCE, season, unit),
                share(plan, PlanSetting.DETECTION_TARGET, season, unit),
                sensitivity,
                sensitivitySource,
                herd.isBlank() ? null : Integer.valueOf(herd),
                text(plan, PlanSetting.HERD_SIZE_SOURCE, season, unit),
                share(plan, PlanSetting.FREEDOM_PRIOR, season, unit),
                share(plan, PlanSetting.INTRODUCTION_RISK, season, unit),
                text(plan, PlanSetting.RISK_WEIGHT_SET, season, unit));
    }

    private static String text(PlanSettings plan, PlanSetting setting, String season, UnitView unit) {
        return plan.text(setting, season, unit.region(), unit.code()).trim();
    }

    private static double share(PlanSettings plan, PlanSetting setting, String season, UnitView unit) {
        return plan.share(setting, season, unit.region(), unit.code()).doubleValue();
    }

    /** Infected animals at the design prevalence: P* x herd size rounded down, at least 1; null for a large herd. */
    @JsonProperty
    Integer infected() {
        return herdSize == null
                ? null
                : Integer.valueOf(
                        Herd.atDesignPrevalence(herdSize, designPrevalence).infected());
    }

    /** These for another season's test and herd, P* and all else as here. */
    Assumptions with(Assumptions season) {
        return new Assumptions(
                designPrevalence,
                targetProbability,
                season.sensitivity,
                season.sensitivitySource,
                season.herdSize,
                season.herdSizeSource,
                prior,
                introductionRisk,
                riskWeightSet);
    }

    boolean isMoreThanTheHerd(int tested) {
        return herdSize != null && tested > herdSize;
    }

    /**
     * Probability in [0, 1] that {@code tested} animals show the disease at the design prevalence, all counting alike:
     * exact for a herd of known size, else binomial. More tested than the herd has is taken as a large herd.
     */
    double detection(int tested) {
        if (herdSize == null || isMoreThanTheHerd(tested)) {
            return new LargeHerd(designPrevalence).detection(tested, sensitivity);
        }
        return Detection.curve(Herd.atDesignPrevalence(herdSize, designPrevalence), List.of(tested), sensitivity)
                .get(0);
    }

    /** Smallest number tested that reaches the target; null if testing the whole herd does not. */
    Integer required() {
        return herdSize == null
                ? Integer.valueOf(new LargeHerd(designPrevalence).required(sensitivity, targetProbability))
                : SampleSize.of(herdSize, designPrevalence, sensitivity, targetProbability)
                        .required();
    }
}
