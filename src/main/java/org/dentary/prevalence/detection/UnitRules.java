package org.dentary.prevalence.detection;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dentary.plan.UnitView;
import org.dentary.prevalence.detection.UnitChance.RiskPoints;
import org.dentary.prevalence.detection.UnitChance.SeasonChance;
import org.dentary.prevalence.question.Scope;
import org.dentary.statistics.detection.Freedom;
import org.dentary.statistics.detection.NoneDetected;
import org.dentary.statistics.detection.WeightedPoints;

/** One unit's figures from its samples and the plan's assumptions. */
final class UnitRules {
    private UnitRules() {}

    /** A season's sample and what the plan said for it. */
    record SeasonSample(String season, Sample sample, Assumptions assumptions) {}

    /**
     * All that is known of a unit.
     *
     * @param past seasons before, oldest first, from the first in which the unit was sampled; may be empty
     * @param current the season asked for
     * @param weights the set that the plan names for the unit, or null
     * @param stations how many stations the plan has in it
     * @param stationNames what people call stations, by code
     * @param seasonNames what people call seasons, by code
     */
    record Known(
            UnitView unit,
            List<SeasonSample> past,
            SeasonSample current,
            RiskWeights weights,
            int stations,
            Map<String, String> stationNames,
            Map<String, String> seasonNames) {}

    /**
     * What is known of a unit; figures only where animals were tested and the disease was detected in none.
     *
     * @param scope which animals count in the report
     */
    static UnitChance chance(Known known, Scope scope, double confidence, SampleConcerns concerns) {
        Assumptions a = known.current().assumptions();
        Sample sample = known.current().sample();
        int tested = sample.tested();
        List<SeasonChance> seasons = seasons(known);
        Double below =
                seasons.isEmpty() ? null : seasons.get(seasons.size() - 1).posterior();
        boolean figures = tested > 0 && sample.detected() == 0;
        Double probability = figures ? Double.valueOf(a.detection(tested)) : null;
        Double upperLimit = figures ? upperLimit(tested, a.sensitivity(), confidence) : null;
        RiskPoints points = figures && known.weights() != null ? points(known.weights(), sample, a) : null;
        Integer target = a.required();
        UnitState state =
                state(sample, seasons, points == null ? probability : Double.valueOf(points.probability()), a);
        boolean asks = state == UnitState.NOT_SAMPLED || state == UnitState.BELOW_TARGET;
        return new UnitChance(
                known.unit().code(),
                known.unit().name(),
                state,
                tested,
                sample.detected(),
                sample.pending(),
                a,
                target,
                probability,
                upperLimit,
                points,
                seasons,
                below,
                asks ? more(known, sample, scope) : null,
                asks ? more(known, sample.withPendingCounted(), scope) : null,
                ChanceWords.unit(
                        state,
                        sample,
                        a,
                        target,
                        probability,
                        upperLimit,
                        confidence,
                        points,
                        seasons,
                        known.seasonNames()),
                ChanceWords.below(below, a, seasons, known.seasonNames()),
                concerns.of(sample, a, known.stations(), known.stationNames()));
    }

    /** 1 - alpha^(1/n) among animals, so divided by the sensitivity for infection; at most 1. */
    static double upperLimit(int tested, double sensitivity, double confidence) {
        return Math.min(1, NoneDetected.of(tested, confidence).oneSided() / sensitivity);
    }

    private static UnitState state(Sample sample, List<SeasonChance> seasons, Double judged, Assumptions a) {
        if (sample.detected() > 0) {
            return UnitState.DETECTED;
        }
        boolean before = seasons.stream().anyMatch(season -> season.detected() > 0);
        if (sample.tested() == 0) {
            return before ? UnitState.DETECTED_EARLIER : UnitState.NOT_SAMPLED;
        }
        if (before) {
            return UnitState.DETECTED_EARLIER;
        }
        return judged >= a.targetProbability() - 1e-12 ? UnitState.TARGET_REACHED : UnitState.BELOW_TARGET;
    }

    private static List<SeasonChance> seasons(Known known) {
        List<SeasonSample> all = new ArrayList<>(known.past());
        if (!all.isEmpty() || known.current().sample().tested() > 0) {
            all.add(known.current());
        }
        if (all.isEmpty()) {
            return List.of();
        }
        Assumptions now = known.current().assumptions();
        List<Freedom.Period> periods = all.stream()
                .map(s -> new Freedom.Period(
                        probability(known.weights(), s.sample(), now.with(s.assumptions())),
                        s.sample().detected() > 0))
                .toList();
        List<Freedom.Step> steps =
                Freedom.of(now.prior(), now.introductionRisk(), periods).periods();
        List<SeasonChance> seasons = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            Sample sample = all.get(i).sample();
            seasons.add(new SeasonChance(
                    all.get(i).season(),
                    sample.tested(),
                    sample.detected(),
                    steps.get(i).sensitivity(),
                    steps.get(i).prior(),
                    steps.get(i).posterior()));
        }
        return seasons;
    }

    private static double probability(RiskWeights weights, Sample sample, Assumptions a) {
        return weights == null
                ? a.detection(sample.tested())
                : RiskWeights.shown(weights.points(sample, a)).probability();
    }

    private static RiskPoints points(RiskWeights weights, Sample sample, Assumptions a) {
        WeightedPoints points = weights.points(sample, a);
        WeightedPoints.Tally shown = RiskWeights.shown(points);
        return new RiskPoints(
                weights.set(),
                weights.citations(),
                points.convention().name(),
                shown.points(),
                shown.required(),
                shown.probability(),
                shown.upperLimit());
    }

    /** How many more of the class that takes fewest of those that count; null if the target cannot be reached. */
    private static Integer more(Known known, Sample sample, Scope scope) {
        Assumptions a = known.current().assumptions();
        if (known.weights() == null) {
            Integer required = a.required();
            return required == null ? null : Integer.valueOf(Math.max(0, required - sample.tested()));
        }
        double probability = probability(known.weights(), sample, a);
        return known.weights().within(scope).stream()
                .map(one -> known.weights().more(one, probability, a))
                .flatMap(Optional::stream)
                .min(Integer::compare)
                .orElse(null);
    }
}
