package org.dentary.statistics.comparison;

import java.util.List;
import org.dentary.statistics.Normal;

/** A chi-square statistic with its degrees of freedom and upper-tail p; all null when undefined, and then {@code warnings} says why. */
public record TestStatistic(
        Double statistic, Integer degreesOfFreedom, Double p, String method, String source, List<String> warnings) {

    static TestStatistic chiSquare(double statistic, int degreesOfFreedom, String method, String source) {
        return new TestStatistic(
                statistic,
                degreesOfFreedom,
                Normal.chiSquareTail(statistic, degreesOfFreedom),
                method,
                source,
                List.of());
    }

    static TestStatistic undefined(String method, String source, String reason) {
        return new TestStatistic(null, null, null, method, source, List.of(reason));
    }
}
