package org.dentary.statistics.comparison;

import java.util.List;
import org.apache.commons.statistics.distribution.HypergeometricDistribution;
import org.apache.commons.statistics.inference.AlternativeHypothesis;
import org.apache.commons.statistics.inference.FisherExactTest;

/**
 * Fisher's exact test of a two by two table. All in [0, 1]; all null when a group has nothing tested.
 *
 * @param twoSided sum over the tables no more probable than the one seen
 * @param less probability of as many or fewer detected in the first group
 * @param greater probability of as many or more detected in the first group
 * @param midP two-sided less half the probability of the table seen
 */
public record FisherExact(
        Double twoSided, Double less, Double greater, Double midP, String source, List<String> warnings) {

    private static final String SOURCE =
            "Fisher 1935, J R Stat Soc 98:39-54; Irwin 1935, Metron 12:83-94; mid-P after Lancaster 1961";

    static FisherExact of(TwoByTwo table) {
        if (table.n1() == 0 || table.n2() == 0) {
            return new FisherExact(null, null, null, null, SOURCE, List.of(TwoProportions.NOT_SAMPLED));
        }
        if (!table.allMarginsPositive()) {
            return new FisherExact(1.0, 1.0, 1.0, 0.5, SOURCE, List.of("Only one table has these margins."));
        }
        double twoSided = p(table, AlternativeHypothesis.TWO_SIDED);
        return new FisherExact(
                twoSided,
                p(table, AlternativeHypothesis.LESS_THAN),
                p(table, AlternativeHypothesis.GREATER_THAN),
                twoSided - margins(table).probability(table.a()) / 2,
                SOURCE,
                List.of());
    }

    /** Detected in the first group, given all four margins and no difference. */
    static HypergeometricDistribution margins(TwoByTwo table) {
        return HypergeometricDistribution.of((int) table.total(), (int) table.detected(), (int) table.n1());
    }

    private static double p(TwoByTwo table, AlternativeHypothesis alternative) {
        int[][] cells = {{table.a(), table.b()}, {table.c(), table.d()}};
        return Math.min(
                1, FisherExactTest.withDefaults().with(alternative).test(cells).getPValue());
    }
}
