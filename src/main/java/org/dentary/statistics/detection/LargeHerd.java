package org.dentary.statistics.detection;

import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;

/**
 * A herd much larger than the sample, of which a share is infected; a simple random sample of it is tested.
 *
 * @param prevalence infected share, in (0, 1]
 */
public record LargeHerd(double prevalence) {

    /**
     * @throws OutOfDomain when the prevalence is not in (0, 1]
     */
    public LargeHerd {
        Domain.positiveProbability("designPrevalence", prevalence);
    }

    /**
     * Chance that {@code tested} animals yield at least one true detection, 1 - (1 - P Se)^n; 0 for none tested.
     *
     * @param sensitivity in [0, 1]
     * @throws OutOfDomain when {@code tested} is below 0 or the sensitivity is out of range
     */
    public double detection(int tested, double sensitivity) {
        Domain.count("tested", tested);
        Domain.probability("sensitivity", sensitivity);
        return prevalence * sensitivity == 1 && tested > 0 ? 1 : Detection.atLeastOne(prevalence * sensitivity, tested);
    }

    /**
     * The smallest sample whose chance of detection reaches the level: ln(1 - C) / ln(1 - P Se), rounded up.
     *
     * @param sensitivity in (0, 1]
     * @param confidence in (0, 1)
     * @throws OutOfDomain when one is out of range
     */
    public int required(double sensitivity, double confidence) {
        Domain.positiveProbability("sensitivity", sensitivity);
        Domain.confidence(confidence);
        return SampleSize.infinite(prevalence * sensitivity, confidence);
    }
}
