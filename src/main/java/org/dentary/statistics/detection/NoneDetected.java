package org.dentary.statistics.detection;

import java.util.List;
import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;

/**
 * How much prevalence can hide behind none detected. The one-sided and the two-sided limit differ (about 3/n and 3.7/n at 95 %) and
 * must not be mixed in one report.
 *
 * @param oneSided 1 - alpha^(1/n); null when nothing was tested
 * @param twoSided 1 - (alpha/2)^(1/n), the upper Clopper-Pearson limit; null when nothing was tested
 * @param ruleOfThree 3/n, the rule of thumb for the one-sided 95 % limit, whatever the level; null when nothing was tested
 */
public record NoneDetected(
        Double oneSided, Double twoSided, Double ruleOfThree, String method, String source, List<String> warnings) {

    /**
     * @throws OutOfDomain when {@code tested} is below 0 or {@code confidence} is not in (0, 1)
     */
    public static NoneDetected of(int tested, double confidence) {
        Domain.count("tested", tested);
        Domain.confidence(confidence);
        String method = "Upper limit at none detected";
        String source = "Hanley & Lippman-Hand 1983, JAMA 249:1743-1745";
        if (tested == 0) {
            return new NoneDetected(null, null, null, method, source, List.of("Not sampled: nothing was tested."));
        }
        double logAlpha = Math.log1p(-confidence);
        return new NoneDetected(
                -Math.expm1(logAlpha / tested),
                -Math.expm1((logAlpha - Math.log(2)) / tested),
                3.0 / tested,
                method,
                source,
                List.of());
    }
}
