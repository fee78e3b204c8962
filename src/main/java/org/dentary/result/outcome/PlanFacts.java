package org.dentary.result.outcome;

import java.util.List;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;

/**
 * What the plan decides about outcomes in the animal's season, region and unit.
 *
 * @param screeningAlone a final screening detection counts without confirmation
 * @param poolPasses a pool not detected passes to its members
 * @param adjunctsThatCount codes of the methods whose adjunct findings move an outcome, in the plan's order
 */
record PlanFacts(boolean screeningAlone, boolean poolPasses, List<String> adjunctsThatCount) {
    /** The rules that the plan sets for a place; empty codes for none. */
    static PlanFacts of(PlanSettings settings, String seasonOrNone, String regionOrNone, String unitOrNone) {
        String season = empty(seasonOrNone);
        String region = empty(regionOrNone);
        String unit = empty(unitOrNone);
        return new PlanFacts(
                settings.isSet(PlanSetting.SCREENING_ALONE_DETECTS, season, region, unit),
                settings.isSet(PlanSetting.POOL_PASSES_TO_MEMBERS, season, region, unit),
                settings.codes(PlanSetting.ADJUNCT_METHODS_THAT_COUNT, season, region, unit));
    }

    /** The rules that apply, in words: the same words stand for the same rules. */
    String words() {
        return "Edition " + OutcomeRules.VERSION + ": a screening detection "
                + (screeningAlone ? "counts without confirmation" : "waits for confirmation") + "; a pool not detected "
                + (poolPasses ? "passes to its members" : "says nothing of its members") + "; "
                + (adjunctsThatCount.isEmpty()
                        ? "no adjunct method counts"
                        : "adjunct methods that count: " + String.join(", ", adjunctsThatCount));
    }

    private static String empty(String code) {
        return code == null || code.isEmpty() ? null : code;
    }
}
