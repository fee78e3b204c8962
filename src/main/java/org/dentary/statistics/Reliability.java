package org.dentary.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Whether one proportion is precise enough to print without a mark. The thresholds are the NCHS presentation standards for proportions
 * (Parker and others 2017), quoted from memory; the marks hide nothing.
 *
 * @param flag the verdict
 * @param absoluteWidth width of the 95 % Clopper-Pearson interval; null when nothing was tested
 * @param relativeWidth {@code absoluteWidth} over the estimate; null when nothing was tested or detected
 * @param reasons why it is not RELIABLE; empty when it is
 */
public record Reliability(Flag flag, Double absoluteWidth, Double relativeWidth, String source, List<String> reasons) {

    /** What to do with the figure. */
    public enum Flag {
        /** Print it. */
        RELIABLE,
        /** Print it, and have somebody look at it: nobody or everybody was detected, or fewer than five were. */
        REVIEW,
        /** Print it with a mark: the sample is too small or the interval too wide. */
        UNRELIABLE
    }

    private static final String SOURCE = "Parker and others 2017, NCHS Vital Health Stat 2(175)";
    private static final int FEWEST_TESTED = 30;
    private static final int FEWEST_DETECTED = 5;
    private static final double NARROW = 0.05;
    private static final double WIDE = 0.30;
    private static final double WIDE_RELATIVE = 1.30;

    /**
     * Judges {@code detected / tested}.
     *
     * @throws OutOfDomain when a count is below 0 or {@code detected} exceeds {@code tested}
     */
    public static Reliability of(int detected, int tested) {
        Domain.counts("detected", detected, "tested", tested);
        if (tested == 0) {
            return new Reliability(Flag.UNRELIABLE, null, null, SOURCE, List.of("Nothing was tested."));
        }
        double width = ProportionLimits.of(detected, tested, IntervalMethod.CLOPPER_PEARSON, 0.95)
                .width();
        Double relative = detected == 0 ? null : Double.valueOf(width * tested / detected);
        List<String> unreliable = unreliable(tested, width, relative);
        List<String> review = review(detected, tested);
        List<String> reasons = new ArrayList<>(unreliable);
        reasons.addAll(review);
        Flag flag = !unreliable.isEmpty() ? Flag.UNRELIABLE : review.isEmpty() ? Flag.RELIABLE : Flag.REVIEW;
        return new Reliability(flag, width, relative, SOURCE, List.copyOf(reasons));
    }

    private static List<String> unreliable(int tested, double width, Double relative) {
        List<String> reasons = new ArrayList<>();
        if (tested < FEWEST_TESTED) {
            reasons.add("Fewer than " + FEWEST_TESTED + " tested.");
        }
        if (width >= WIDE) {
            reasons.add(String.format(Locale.ROOT, "Interval %.2f wide, %.2f or more.", width, WIDE));
        } else if (width > NARROW && relative != null && relative > WIDE_RELATIVE) {
            reasons.add(
                    String.format(Locale.ROOT, "Interval %.0f %% of the estimate, more than 130 %%.", 100 * relative));
        }
        return reasons;
    }

    private static List<String> review(int detected, int tested) {
        List<String> reasons = new ArrayList<>();
        if (detected == 0 || detected == tested) {
            reasons.add("Nobody or everybody was detected.");
        }
        if (detected > 0 && detected < FEWEST_DETECTED) {
            reasons.add("Fewer than " + FEWEST_DETECTED + " detected.");
        }
        return reasons;
    }
}
