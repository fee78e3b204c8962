package org.dentary.statistics;

import java.util.Locale;

/**
 * A share as it is printed: no more digits than the animals behind it carry, and never as none or all of them where it is neither.
 * The digits are common practice, no source.
 */
public final class Percent {
    private static final int FEW = 30;
    private static final int MANY = 1000;
    private static final int MOST_DECIMALS = 6;

    private Percent() {}

    /**
     * No decimal below 30 animals, one below 1,000, else two; such as {@code 6.7 %}. What rounding would make none is "under", what it
     * would make all is "over" the last digit printed: the lower limit of 1 of 20 is not 0 %, its upper one for 19 not 100 %. A share
     * below 0, as an uncut estimate may be, gets as many decimals as show it.
     *
     * @param share finite, mostly in [0, 1]
     * @param animals how many it is a share of, 0 or more
     */
    public static String of(double share, long animals) {
        int decimals = animals < FEW ? 0 : animals < MANY ? 1 : 2;
        double unit = Math.pow(10, -decimals);
        if (share > 0 && isZero(fixed(100 * share, decimals))) {
            return "under " + fixed(unit, decimals) + " %";
        }
        if (share < 1 && fixed(100 * share, decimals).equals(fixed(100, decimals))) {
            return "over " + fixed(100 - unit, decimals) + " %";
        }
        while (share < 0 && decimals < MOST_DECIMALS && isZero(fixed(100 * share, decimals))) {
            decimals++;
        }
        String text = fixed(100 * share, decimals);
        return (isZero(text) ? text.replace("-", "") : text) + " %";
    }

    private static boolean isZero(String text) {
        return text.matches("-?0(\\.0+)?");
    }

    private static String fixed(double value, int decimals) {
        return String.format(Locale.US, "%,." + decimals + "f", value);
    }
}
