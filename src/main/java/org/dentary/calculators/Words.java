package org.dentary.calculators;

import java.util.Locale;
import org.dentary.statistics.Percent;

/** Numbers as they are printed: no more digits than the sample carries. */
public final class Words {
    static final String UNDEFINED = "undefined";

    private Words() {}

    /** A share as {@link Percent} prints it. */
    public static String percent(Double share, long animals) {
        return share == null ? UNDEFINED : Percent.of(share, animals);
    }

    /** A probability in percent with one decimal; what is not quite all or nothing is not printed as such. */
    public static String chance(Double probability) {
        if (probability == null) {
            return UNDEFINED;
        }
        if (probability > 0.9995 && probability < 1) {
            return "above 99.9 %";
        }
        return probability > 0 && probability < 0.0005 ? "below 0.1 %" : fixed(100 * probability, 1) + " %";
    }

    /** A level or another fraction as it was given, in percent. */
    public static String level(double fraction) {
        return trimmed(100 * fraction, 4) + " %";
    }

    /** {@code (4.6 % to 13.5 %)}. */
    public static String between(Double lower, Double upper, long animals) {
        return lower == null || upper == null
                ? "(no interval)"
                : "(" + percent(lower, animals) + " to " + percent(upper, animals) + ")";
    }

    /** A probability of a test: three decimals, or less than 0.001. */
    public static String p(Double p) {
        if (p == null) {
            return UNDEFINED;
        }
        return p < 0.001 ? "below 0.001" : fixed(p, 3);
    }

    /** A ratio or another number: three decimals at most. */
    public static String number(Double number) {
        if (number == null) {
            return UNDEFINED;
        }
        return number.isInfinite() ? "unbounded" : trimmed(number, 3);
    }

    /** A number with one decimal at most. */
    public static String tenths(double number) {
        return trimmed(number, 1);
    }

    /** A count with its thousands apart. */
    public static String count(long count) {
        return String.format(Locale.US, "%,d", count);
    }

    /** {@code 1 animal}, {@code 2 animals}. */
    public static String animals(long count) {
        return count(count) + (count == 1 ? " animal" : " animals");
    }

    private static String fixed(double value, int decimals) {
        String text = String.format(Locale.US, "%,." + decimals + "f", value);
        return text.matches("-0(\\.0+)?") ? text.substring(1) : text;
    }

    private static String trimmed(double value, int decimals) {
        String text = fixed(value, decimals);
        return text.contains(".") ? text.replaceAll("\\.?0+$", "") : text;
    }
}
