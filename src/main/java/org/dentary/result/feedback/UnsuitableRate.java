package org.dentary.result.feedback;

import org.dentary.statistics.Percent;

/**
 * How often tissue of one group could not be read.
 *
 * @param group coded; a person's roster code, a station's code, a tissue
 * @param unsuitable specimens unsuitable for a reason of tissue and never read
 * @param reported those and the specimens that were read
 * @param rate unsuitable / reported, in [0, 1]
 * @param lower lower limit of the rate's 95 % interval, in [0, 1]
 * @param upper upper limit, in [0, 1]
 */
public record UnsuitableRate(String group, long unsuitable, long reported, Double rate, Double lower, Double upper) {
    /** The rate with no more digits than the specimens carry. */
    public String percent() {
        return percent(rate);
    }

    /** The interval in percent. */
    public String interval() {
        return percent(lower) + " to " + percent(upper);
    }

    private String percent(Double share) {
        return share == null ? "" : Percent.of(share, reported);
    }
}
