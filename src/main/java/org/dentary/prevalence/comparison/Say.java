package org.dentary.prevalence.comparison;

import java.util.Locale;

/** Numbers as the sentences say them. */
final class Say {
    private Say() {}

    /** Three decimals, or "below 0.001". */
    static String p(Double p) {
        return p == null ? "undefined" : p < 0.001 ? "below 0.001" : String.format(Locale.ROOT, "%.3f", p);
    }

    /** A difference of fractions in percentage points, without its unit: one decimal, a minus before what is below 0. */
    static String points(double difference) {
        String text = String.format(Locale.ROOT, "%.1f", 100 * Math.abs(difference));
        return difference < 0 && !text.equals("0.0") ? "−" + text : text;
    }

    /** {@code 9.4 percentage points (95 % interval 0.3 to 18.9)}. */
    static String difference(Figure figure, double confidence) {
        return points(figure.estimate()) + " percentage points (" + level(confidence) + " interval "
                + points(figure.lower()) + " to " + points(figure.upper()) + ")";
    }

    /** {@code 1.53 (95 % interval 0.99 to 2.37)}. */
    static String ratio(Figure figure, double confidence) {
        return number(figure.estimate())
                + (figure.hasLimits()
                        ? " (" + level(confidence) + " interval " + number(figure.lower()) + " to "
                                + number(figure.upper()) + ")"
                        : " (no interval)");
    }

    static String number(double value) {
        return Double.isInfinite(value) ? "unbounded" : String.format(Locale.ROOT, "%.2f", value);
    }

    static String level(double confidence) {
        return String.format(Locale.ROOT, "%.4f", 100 * confidence).replaceFirst("\\.?0+$", "") + " %";
    }

    /** What an interval of a difference still allows, first seen from the second. */
    static String allows(Figure figure, String first, String second) {
        return "These counts are compatible with anything from " + reach(figure.lower(), first, second) + " to "
                + reach(figure.upper(), first, second) + ".";
    }

    private static String reach(double limit, String first, String second) {
        String size = points(Math.abs(limit)) + " points ";
        return size + (limit < 0 ? "lower in " : "higher in ") + first + " than in " + second;
    }
}
