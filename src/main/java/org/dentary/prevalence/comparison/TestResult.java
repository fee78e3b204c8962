package org.dentary.prevalence.comparison;

import org.dentary.statistics.comparison.TestStatistic;

/**
 * One test of a comparison.
 *
 * @param test what it is called
 * @param statistic null for an exact test
 * @param degreesOfFreedom null for an exact test
 * @param p in [0, 1]; null if no test was possible
 * @param adjustedP Holm's, over the tests that decide in this answer; null for a test that decides nothing
 * @param source publication
 */
public record TestResult(
        String test, Double statistic, Integer degreesOfFreedom, Double p, Double adjustedP, String source) {
    static TestResult of(TestStatistic of) {
        return new TestResult(of.method(), of.statistic(), of.degreesOfFreedom(), of.p(), null, of.source());
    }

    static TestResult exact(String test, Double p, String source) {
        return new TestResult(test, null, null, p, null, source);
    }

    TestResult adjusted(Double to) {
        return new TestResult(test, statistic, degreesOfFreedom, p, to, source);
    }
}
