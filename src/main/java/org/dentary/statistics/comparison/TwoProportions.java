package org.dentary.statistics.comparison;

import java.util.List;
import org.apache.commons.statistics.inference.ChiSquareTest;
import org.dentary.statistics.Domain;
import org.dentary.statistics.IntervalMethod;
import org.dentary.statistics.Limits;
import org.dentary.statistics.Normal;
import org.dentary.statistics.OutOfDomain;
import org.dentary.statistics.ProportionLimits;

/**
 * Two independent proportions compared.
 *
 * @param difference first minus second, Newcombe's score interval
 * @param riskRatio first over second, Katz's interval
 * @param oddsRatio three ways
 * @param fisher exact test on the margins
 * @param chiSquare Pearson's, without Yates' correction, one degree of freedom
 * @param chiSquareN1 Pearson's times (N - 1)/N
 * @param warnings what holds for the comparison as a whole
 */
public record TwoProportions(
        Estimate difference,
        Estimate riskRatio,
        OddsRatio oddsRatio,
        FisherExact fisher,
        TestStatistic chiSquare,
        TestStatistic chiSquareN1,
        List<String> warnings) {

    /** The exact test walks over every table with the same margins; beyond this it would keep its caller waiting. */
    public static final int MOST_TESTED = 1_000_000;

    private static final String NEWCOMBE = "Newcombe 1998, Stat Med 17:873-890, method 10";
    private static final String KATZ = "Katz, Baptista, Azen & Pike 1978, Biometrics 34:469-474";
    private static final String CAMPBELL = "Campbell 2007, Stat Med 26:3661-3675";
    private static final String PEARSON = "Pearson 1900, Phil Mag 50:157-175";
    static final String NOT_SAMPLED =
            "Not sampled: one of the groups has nothing tested, so there is nothing to compare.";
    private static final String NO_CONTRAST = "No contrast possible: nobody or everybody was detected.";

    /**
     * Compares {@code detected1 / tested1} with {@code detected2 / tested2}; all limits two-sided at {@code confidence}.
     *
     * @throws OutOfDomain when a count is below 0, a group exceeds 1,000,000, a detected exceeds its tested, or
     *     {@code confidence} is not in (0, 1)
     */
    public static TwoProportions of(int detected1, int tested1, int detected2, int tested2, double confidence) {
        TwoByTwo table = TwoByTwo.of(detected1, tested1, detected2, tested2);
        Domain.confidence(confidence);
        TestStatistic plain = chiSquare(table);
        return new TwoProportions(
                difference(table, confidence),
                riskRatio(table, confidence),
                OddsRatio.of(table, confidence),
                FisherExact.of(table),
                plain,
                chiSquareN1(table, plain),
                warnings(table));
    }

    /** L = D - sqrt((p1 - l1)^2 + (u2 - p2)^2) and U likewise, with Wilson limits without correction. */
    private static Estimate difference(TwoByTwo table, double confidence) {
        String method = "Newcombe score interval";
        if (table.n1() == 0 || table.n2() == 0) {
            return Estimate.undefined(method, NEWCOMBE, NOT_SAMPLED);
        }
        double p1 = table.a() / table.n1();
        double p2 = table.c() / table.n2();
        Limits one = ProportionLimits.of(table.a(), table.a() + table.b(), IntervalMethod.WILSON, confidence);
        Limits two = ProportionLimits.of(table.c(), table.c() + table.d(), IntervalMethod.WILSON, confidence);
        return Estimate.of(
                p1 - p2,
                p1 - p2 - Math.hypot(p1 - one.lower(), two.upper() - p2),
                p1 - p2 + Math.hypot(one.upper() - p1, p2 - two.lower()),
                method,
                NEWCOMBE);
    }

    private static Estimate riskRatio(TwoByTwo table, double confidence) {
        String method = "Katz log interval";
        if (table.n1() == 0 || table.n2() == 0) {
            return Estimate.undefined(method, KATZ, NOT_SAMPLED);
        }
        if (table.c() == 0) {
            return Estimate.undefined(method, KATZ, "Risk ratio undefined: none detected in the second group.");
        }
        double ratio = table.a() / table.n1() / (table.c() / table.n2());
        if (table.a() == 0) {
            return Estimate.withoutLimits(ratio, method, KATZ, "No Katz interval: none detected in the first group.");
        }
        double variance = 1.0 / table.a() - 1 / table.n1() + 1.0 / table.c() - 1 / table.n2();
        return Estimate.onLogScale(ratio, Math.sqrt(Math.max(0, variance)), Normal.z(confidence), method, KATZ);
    }

    private static TestStatistic chiSquare(TwoByTwo table) {
        String method = "Pearson chi-square, no continuity correction";
        if (table.n1() == 0 || table.n2() == 0) {
            return TestStatistic.undefined(method, PEARSON, NOT_SAMPLED);
        }
        if (!table.allMarginsPositive()) {
            return TestStatistic.undefined(method, PEARSON, NO_CONTRAST);
        }
        return TestStatistic.chiSquare(ChiSquareTest.withDefaults().statistic(table.cells()), 1, method, PEARSON);
    }

    private static TestStatistic chiSquareN1(TwoByTwo table, TestStatistic plain) {
        String method = "Pearson chi-square times (N - 1)/N";
        if (plain.statistic() == null) {
            return TestStatistic.undefined(method, CAMPBELL, plain.warnings().get(0));
        }
        return TestStatistic.chiSquare(plain.statistic() * (table.total() - 1) / table.total(), 1, method, CAMPBELL);
    }

    private static List<String> warnings(TwoByTwo table) {
        if (table.n1() == 0 || table.n2() == 0) {
            return List.of(NOT_SAMPLED);
        }
        return table.allMarginsPositive() ? List.of() : List.of(NO_CONTRAST);
    }
}
