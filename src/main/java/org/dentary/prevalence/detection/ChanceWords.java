package org.dentary.prevalence.detection;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.dentary.prevalence.detection.UnitChance.RiskPoints;
import org.dentary.prevalence.detection.UnitChance.SeasonChance;

/** Figures in sentences, each with what it rests on. */
public final class ChanceWords {
    private ChanceWords() {}

    /** A probability with one decimal; what would round to all or nothing says so. */
    public static String chance(Double probability) {
        if (probability == null) {
            return "";
        }
        if (probability >= 0.9995 && probability < 1) {
            return "over 99.9 %";
        }
        if (probability > 0 && probability < 0.0005) {
            return "under 0.1 %";
        }
        return String.format(Locale.ROOT, "%.1f %%", 100 * probability);
    }

    /** A share as it was set: no more decimals than it has. */
    public static String share(double share) {
        return String.format(Locale.ROOT, "%.4f", 100 * share).replaceFirst("\\.?0+$", "") + " %";
    }

    public static String count(int animals) {
        return String.format(Locale.US, "%,d", animals);
    }

    /** The state of a unit and its figures. */
    static String unit(
            UnitState state,
            Sample sample,
            Assumptions a,
            Integer target,
            Double probability,
            Double upperLimit,
            double confidence,
            RiskPoints points,
            List<SeasonChance> seasons,
            Map<String, String> seasonNames) {
        int tested = sample.tested();
        return switch (state) {
            case NOT_SAMPLED -> "Nobody tested: nothing is ruled out.";
            case DETECTED ->
                "Detected in " + count(sample.detected()) + " of " + count(tested)
                        + " tested. Detection has happened: its chance is no longer the question, prevalence is.";
            case DETECTED_EARLIER ->
                "Detected before, in " + detectedIn(seasons, seasonNames)
                        + ": the disease is known to be there, prevalence is the question. "
                        + (tested == 0
                                ? "Nobody tested this season."
                                : figures(tested, a, probability, upperLimit, confidence));
            case TARGET_REACHED ->
                figures(tested, a, probability, upperLimit, confidence) + weighted(points, a) + " The target of "
                        + share(a.targetProbability()) + " is reached. None detected does not show absence.";
            case BELOW_TARGET ->
                figures(tested, a, probability, upperLimit, confidence) + weighted(points, a) + " That is short of "
                        + share(a.targetProbability()) + shortfall(target, a, points) + ".";
        };
    }

    private static String shortfall(Integer target, Assumptions a, RiskPoints points) {
        if (points != null) {
            return String.format(Locale.US, ", which takes %,.1f points", points.required());
        }
        return target == null
                ? ", which even testing all " + count(a.herdSize()) + " would not reach with this test"
                : ", which takes " + count(target) + " tested";
    }

    private static String figures(int tested, Assumptions a, Double probability, Double upperLimit, double confidence) {
        return "Not detected in " + count(tested) + " tested. At a prevalence of " + share(a.designPrevalence())
                + " that many would have shown it with a probability of " + chance(probability)
                + "; prevalence is below " + chance(upperLimit) + " with one-sided confidence of " + share(confidence)
                + ".";
    }

    private static String weighted(RiskPoints points, Assumptions a) {
        return points == null
                ? ""
                : String.format(
                        Locale.US,
                        " By risk weights (set %s): %,.1f points of %,.1f, probability %s, the design prevalence of %s meant"
                                + " as that of the %s.",
                        points.set(),
                        points.points(),
                        points.required(),
                        chance(points.probability()),
                        share(a.designPrevalence()),
                        points.convention().equals("POPULATION_MEAN") ? "whole herd" : "reference class");
    }

    /** The probability over seasons, its prior, risk, P* and all it rests on. */
    static String below(
            Double probabilityBelow, Assumptions a, List<SeasonChance> seasons, Map<String, String> seasonNames) {
        if (probabilityBelow == null || seasons.isEmpty()) {
            return "";
        }
        String p = share(a.designPrevalence());
        if (seasons.stream().anyMatch(s -> s.detected() > 0)) {
            return "Probability that prevalence is below " + p
                    + ": 0 as a question of detection, because it was detected in " + detectedIn(seasons, seasonNames)
                    + "; prevalence answers from here on.";
        }
        return "Probability that prevalence is below " + p + ": " + chance(probabilityBelow) + " after "
                + seasons.size() + (seasons.size() == 1 ? " season" : " seasons")
                + " without detection; prior " + share(a.prior()) + " before "
                + named(seasons.get(0), seasonNames) + ", risk of introduction " + share(a.introductionRisk())
                + " from season to season, " + rests(a) + ".";
    }

    /** Test and herd, as the plan has them. */
    static String rests(Assumptions a) {
        return "test sensitivity " + share(a.sensitivity())
                + (a.sensitivitySource().isEmpty() ? " (no source named)" : " (" + a.sensitivitySource() + ")")
                + (a.herdSize() == null
                        ? ", herd much larger than the sample"
                        : ", herd of " + count(a.herdSize()) + " with " + count(a.infected()) + " infected"
                                + (a.herdSizeSource().isEmpty() ? "" : " (" + a.herdSizeSource() + ")"))
                + (a.riskWeightSet().isEmpty() ? "" : ", risk weights " + a.riskWeightSet());
    }

    private static String detectedIn(List<SeasonChance> seasons, Map<String, String> names) {
        return seasons.stream()
                .filter(s -> s.detected() > 0)
                .map(s -> named(s, names) + " (" + count(s.detected()) + " of " + count(s.tested()) + ")")
                .collect(java.util.stream.Collectors.joining(", "));
    }

    private static String named(SeasonChance season, Map<String, String> names) {
        return names.getOrDefault(season.season(), season.season());
    }
}
