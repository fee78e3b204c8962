package org.dentary.statistics.comparison;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.inference.ChiSquareTest;
import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;

/**
 * Trend of a proportion over scored groups, with what the straight line leaves unexplained.
 *
 * @param slope least-squares change of the proportion per unit of score, each group weighted by its size
 * @param trend Cochran-Armitage, N (not N - 1) in its denominator, one degree of freedom
 * @param heterogeneity Pearson's chi-square over the groups, degrees of freedom groups - 1
 * @param departure heterogeneity - trend, degrees of freedom groups - 2; a small p says that a line misleads
 */
public record Trend(
        Double slope,
        TestStatistic trend,
        TestStatistic heterogeneity,
        TestStatistic departure,
        List<String> warnings) {

    /** One group: {@code score} is a real quantity such as an age in years, not the group's rank. */
    public record Group(String label, double score, int detected, int tested) {}

    private static final String ARMITAGE = "Cochran 1954, Biometrics 10:417-451; Armitage 1955, Biometrics 11:375-386";
    private static final String PEARSON = "Pearson 1900, Phil Mag 50:157-175";
    private static final String TREND = "Cochran-Armitage chi-square for trend";
    private static final String HETEROGENEITY = "Pearson chi-square for heterogeneity";
    private static final String DEPARTURE = "Chi-square for departure from the trend";

    /**
     * Tests the groups in any order; those with nothing tested are ignored.
     *
     * @throws OutOfDomain when there is no group, a score is not finite, a count is below 0 or detected exceeds tested; the field is
     *     {@code groups[index].detected} and so on
     */
    public static Trend of(List<Group> groups) {
        Domain.notEmpty("groups", groups);
        List<Group> used = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        for (int i = 0; i < groups.size(); i++) {
            Group group = groups.get(i);
            String at = "groups[" + i + "].";
            Domain.finite(at + "score", group.score());
            Domain.counts(at + "detected", group.detected(), at + "tested", group.tested());
            if (group.tested() > 0) {
                used.add(group);
            }
        }
        if (used.size() < groups.size()) {
            warnings.add((groups.size() - used.size()) + " of " + groups.size()
                    + " groups have nothing tested and are left out.");
        }
        return of(used, warnings);
    }

    private static Trend of(List<Group> groups, List<String> warnings) {
        double n = groups.stream().mapToDouble(Group::tested).sum();
        double x = groups.stream().mapToDouble(Group::detected).sum();
        if (groups.size() < 2 || x == 0 || x == n) {
            String reason = groups.size() < 2
                    ? "No contrast possible: fewer than two groups have anything tested."
                    : "No contrast possible: nobody or everybody was detected.";
            warnings.add(reason);
            return undefined(reason, warnings);
        }
        double meanScore =
                groups.stream().mapToDouble(g -> g.tested() * g.score()).sum() / n;
        double spread = 0;
        double covariance = 0;
        for (Group group : groups) {
            double distance = group.score() - meanScore;
            spread += group.tested() * distance * distance;
            covariance += (group.detected() - group.tested() * (x / n)) * distance;
        }
        TestStatistic heterogeneity = TestStatistic.chiSquare(
                ChiSquareTest.withDefaults().statistic(cells(groups)), groups.size() - 1, HETEROGENEITY, PEARSON);
        boolean sameScores =
                groups.stream().mapToDouble(Group::score).distinct().count() == 1;
        if (sameScores || spread == 0) {
            String reason = "No trend: all scores are equal.";
            warnings.add(reason);
            return new Trend(
                    null,
                    TestStatistic.undefined(TREND, ARMITAGE, reason),
                    heterogeneity,
                    TestStatistic.undefined(DEPARTURE, ARMITAGE, reason),
                    List.copyOf(warnings));
        }
        TestStatistic trend =
                TestStatistic.chiSquare(covariance * covariance / (x / n * ((n - x) / n) * spread), 1, TREND, ARMITAGE);
        return new Trend(
                covariance / spread,
                trend,
                heterogeneity,
                departure(heterogeneity, trend, groups.size() - 2),
                List.copyOf(warnings));
    }

    private static TestStatistic departure(TestStatistic heterogeneity, TestStatistic trend, int degreesOfFreedom) {
        if (degreesOfFreedom == 0) {
            return TestStatistic.undefined(DEPARTURE, ARMITAGE, "Two groups always lie on a line.");
        }
        double left = Math.max(0, heterogeneity.statistic() - trend.statistic());
        return TestStatistic.chiSquare(left, degreesOfFreedom, DEPARTURE, ARMITAGE);
    }

    private static Trend undefined(String reason, List<String> warnings) {
        return new Trend(
                null,
                TestStatistic.undefined(TREND, ARMITAGE, reason),
                TestStatistic.undefined(HETEROGENEITY, PEARSON, reason),
                TestStatistic.undefined(DEPARTURE, ARMITAGE, reason),
                List.copyOf(warnings));
    }

    private static long[][] cells(List<Group> groups) {
        return groups.stream()
                .map(g -> new long[] {g.detected(), g.tested() - g.detected()})
                .toArray(long[][]::new);
    }
}
