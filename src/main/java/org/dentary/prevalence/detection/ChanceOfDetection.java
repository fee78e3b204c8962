package org.dentary.prevalence.detection;

import java.util.List;
import java.util.Map;
import org.dentary.prevalence.PrevalenceReport.CutName;
import org.dentary.prevalence.PrevalenceReport.StepCount;

/**
 * What the sampling of a season can rule out, unit by unit. There is no figure for all units together: animals of one unit
 * say nothing about another.
 *
 * @param confidence one-sided level of the upper limits
 * @param cut the data cut it stands on, or null
 * @param asOf when its lines were read, RFC 3339
 * @param scope which animals count, by field
 * @param tested animals tested in all units
 * @param detected those in which it was detected
 * @param incomplete whether more is pending than the plan allows
 * @param units in set-up order
 * @param takenToCounted how many animals leave at each step; all but the first add up to the first
 * @param takeNext units short of their target, in set-up order
 */
public record ChanceOfDetection(
        String season,
        String disease,
        String species,
        double confidence,
        CutName cut,
        String asOf,
        Map<String, List<String>> scope,
        int tested,
        int detected,
        boolean incomplete,
        List<UnitChance> units,
        List<StepCount> takenToCounted,
        List<TakeNext> takeNext,
        List<String> notes,
        List<String> warnings,
        List<String> cautions) {}
