package org.dentary.statistics.comparison;

import java.util.List;
import org.dentary.statistics.Roots;

/**
 * Breslow and Day's test of a common odds ratio with Tarone's correction: sum of (a - A)^2 / V less (sum of a - A)^2 / sum of V, where A
 * is the first cell that the margins and the common odds ratio imply.
 */
final class BreslowDay {

    private static final String METHOD = "Breslow-Day test with Tarone's correction";
    private static final String SOURCE =
            "Breslow & Day 1980, Statistical Methods in Cancer Research I, ch. 4; Tarone 1985, Biometrika 72:91-95";

    private BreslowDay() {}

    /** Adds to {@code warnings} how many strata carry no information. */
    static TestStatistic of(List<TwoByTwo> tables, Double commonOddsRatio, List<String> warnings) {
        List<TwoByTwo> informative =
                tables.stream().filter(TwoByTwo::allMarginsPositive).toList();
        int silent = tables.size() - informative.size();
        if (silent > 0) {
            warnings.add(
                    silent + " of " + tables.size()
                            + " strata have an empty margin: they are left out of the Breslow-Day test and its degrees of freedom.");
        }
        if (commonOddsRatio == null || commonOddsRatio == 0 || commonOddsRatio.isInfinite()) {
            return TestStatistic.undefined(
                    METHOD, SOURCE, "Undefined: the common odds ratio is 0, unbounded or undefined.");
        }
        if (informative.size() < 2) {
            return TestStatistic.undefined(METHOD, SOURCE, "Undefined: fewer than two informative strata.");
        }
        double squares = 0;
        double distance = 0;
        double variance = 0;
        for (TwoByTwo table : informative) {
            double expected = expected(table, commonOddsRatio);
            double v = 1
                    / (1 / expected
                            + 1 / (table.n1() - expected)
                            + 1 / (table.detected() - expected)
                            + 1 / (table.n2() - table.detected() + expected));
            double away = table.a() - expected;
            squares += away * away / v;
            distance += away;
            variance += v;
        }
        double statistic = Math.max(0, squares - distance * distance / variance);
        return TestStatistic.chiSquare(statistic, informative.size() - 1, METHOD, SOURCE);
    }

    /** The root of A (n2 - m + A) = psi (n1 - A)(m - A) within the margins; one always lies there. */
    static double expected(TwoByTwo table, double psi) {
        double n1 = table.n1();
        double m = table.detected();
        double rest = table.n2() - m;
        return Roots.between(a -> a * (rest + a) - psi * (n1 - a) * (m - a), Math.max(0, -rest), Math.min(n1, m));
    }
}
