package org.dentary.statistics;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.BetaDistribution;

/**
 * Small areas drawn towards their common proportion: beta-binomial empirical Bayes by moments. The raw figure stays beside the smoothed
 * one; a first detection is never smoothed away.
 *
 * @param pooled all detected / all tested; null when nothing was tested
 * @param betweenUnits estimated variance between units (A); null or not above 0 when no spread can be told from chance
 * @param priorSize animals the common proportion counts for (M); null when no spread can be told from chance
 * @param units in the order given
 */
public record Smoothing(
        Double pooled,
        Double betweenUnits,
        Double priorSize,
        List<Smoothed> units,
        String method,
        String source,
        List<String> warnings) {

    /** One unit; counts are 0 or more. */
    public record Unit(String label, int detected, int tested) {}

    /**
     * @param raw detected / tested; null when nothing was tested
     * @param smoothed null only when nothing was tested anywhere
     * @param lower null when there is no interval
     * @param upper null when there is no interval
     */
    public record Smoothed(
            String label, Double raw, Double smoothed, Double lower, Double upper, List<String> warnings) {}

    private static final String METHOD = "Empirical-Bayes smoothing, beta-binomial by moments";
    private static final String SOURCE =
            "Martuzzi & Elliott 1996, Stat Med 15:1867-1873; caution: Zhao, Lee & Barnes 2010, Int J Environ Res Public Health 7:380-394";
    private static final int FEW_UNITS = 10;

    /** A prior size below this is rounding, and taken as 0: the units share nothing. */
    private static final double NO_PRIOR = 1e-12;

    /**
     * @throws OutOfDomain when there is no unit, a count is out of range (field {@code units[index].detected} and so on), or
     *     {@code confidence} is not in (0, 1)
     */
    public static Smoothing of(List<Unit> units, double confidence) {
        Domain.notEmpty("units", units);
        Domain.confidence(confidence);
        for (int i = 0; i < units.size(); i++) {
            String at = "units[" + i + "].";
            Domain.counts(
                    at + "detected",
                    units.get(i).detected(),
                    at + "tested",
                    units.get(i).tested());
        }
        double n = units.stream().mapToDouble(Unit::tested).sum();
        double x = units.stream().mapToDouble(Unit::detected).sum();
        long sampled = units.stream().filter(unit -> unit.tested() > 0).count();
        if (n == 0) {
            String reason = "Not sampled: nothing was tested in any unit.";
            return new Smoothing(
                    null,
                    null,
                    null,
                    units.stream()
                            .map(unit -> new Smoothed(unit.label(), null, null, null, null, List.of(reason)))
                            .toList(),
                    METHOD,
                    SOURCE,
                    List.of(reason));
        }
        double pooled = x / n;
        double meanSize = n / sampled;
        double spread = units.stream()
                        .filter(unit -> unit.tested() > 0)
                        .mapToDouble(unit -> unit.tested() * square((double) unit.detected() / unit.tested() - pooled))
                        .sum()
                / n;
        Double between =
                meanSize == 1 ? null : Double.valueOf((meanSize * spread - pooled * (1 - pooled)) / (meanSize - 1));
        boolean told = between != null && between > 0;
        double size = told ? pooled * (1 - pooled) / between - 1 : 0;
        double prior = size < NO_PRIOR ? 0 : size;
        return new Smoothing(
                pooled,
                between,
                told ? Double.valueOf(prior) : null,
                units.stream()
                        .map(unit -> told ? smoothed(unit, pooled, prior, confidence) : pooledOnly(unit, pooled))
                        .toList(),
                METHOD,
                SOURCE,
                warnings(told, sampled));
    }

    private static Smoothed smoothed(Unit unit, double pooled, double prior, double confidence) {
        Double raw = raw(unit);
        double alpha = prior * pooled + unit.detected();
        double beta = prior * (1 - pooled) + unit.tested() - unit.detected();
        double value = alpha + beta == 0 ? pooled : alpha / (alpha + beta);
        List<String> warnings = unit.tested() == 0 ? List.of("No data: the common proportion.") : List.of();
        if (alpha <= 0 || beta <= 0) {
            List<String> more = new ArrayList<>(warnings);
            more.add("No interval: the units share nothing to lend to this one.");
            return new Smoothed(unit.label(), raw, value, null, null, List.copyOf(more));
        }
        double tail = (1 - confidence) / 2;
        return new Smoothed(
                unit.label(),
                raw,
                value,
                BetaDistribution.of(alpha, beta).inverseCumulativeProbability(tail),
                BetaDistribution.of(alpha, beta).inverseCumulativeProbability(1 - tail),
                warnings);
    }

    private static Smoothed pooledOnly(Unit unit, double pooled) {
        return new Smoothed(
                unit.label(),
                raw(unit),
                pooled,
                null,
                null,
                unit.tested() == 0 ? List.of("No data: the common proportion.") : List.of());
    }

    private static Double raw(Unit unit) {
        return unit.tested() == 0 ? null : Double.valueOf((double) unit.detected() / unit.tested());
    }

    private static List<String> warnings(boolean told, long sampled) {
        List<String> warnings = new ArrayList<>();
        if (told) {
            warnings.add(
                    "The intervals ignore the error of the common proportion and its spread: they are too narrow.");
        } else {
            warnings.add(
                    "No spread between units can be told from chance: every unit gets the common proportion, without an interval.");
        }
        if (sampled < FEW_UNITS) {
            warnings.add("Fewer than " + FEW_UNITS + " units: the smoothing is unstable.");
        }
        return List.copyOf(warnings);
    }

    private static double square(double value) {
        return value * value;
    }
}
