package org.dentary.statistics.detection;

import java.util.List;
import org.apache.commons.statistics.inference.AlternativeHypothesis;
import org.apache.commons.statistics.inference.BinomialTest;
import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;
import org.dentary.statistics.comparison.TwoProportions;

/**
 * Exact binomial test of one proportion against a threshold fixed in advance. Not for last season's figure, which is itself an estimate:
 * {@link TwoProportions} is for that.
 *
 * @param twoSided sum over the counts no more probable than the one seen
 * @param less probability of as many detected or fewer
 * @param greater probability of as many detected or more
 */
public record ThresholdTest(
        Double twoSided, Double less, Double greater, String method, String source, List<String> warnings) {

    private static final String METHOD = "Exact binomial test against a fixed threshold";
    private static final String SOURCE = "Clopper & Pearson 1934, Biometrika 26:404-413";

    /**
     * Tests {@code detected / tested} against {@code threshold}, a fraction in [0, 1].
     *
     * @throws OutOfDomain when a count is below 0, {@code detected} exceeds {@code tested}, or the threshold is not in [0, 1]
     */
    public static ThresholdTest of(int detected, int tested, double threshold) {
        Domain.counts("detected", detected, "tested", tested);
        Domain.probability("threshold", threshold);
        if (tested == 0) {
            return new ThresholdTest(null, null, null, METHOD, SOURCE, List.of("Not sampled: nothing was tested."));
        }
        return new ThresholdTest(
                p(detected, tested, threshold, AlternativeHypothesis.TWO_SIDED),
                p(detected, tested, threshold, AlternativeHypothesis.LESS_THAN),
                p(detected, tested, threshold, AlternativeHypothesis.GREATER_THAN),
                METHOD,
                SOURCE,
                List.of());
    }

    private static double p(int detected, int tested, double threshold, AlternativeHypothesis alternative) {
        return BinomialTest.withDefaults()
                .with(alternative)
                .test(tested, detected, threshold)
                .getPValue();
    }
}
