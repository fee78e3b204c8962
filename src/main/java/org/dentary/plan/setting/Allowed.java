package org.dentary.plan.setting;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.MonthDay;
import java.util.function.Predicate;
import org.dentary.platform.CalendarText;

/**
 * What a setting may be.
 *
 * @param words the allowed values as a sentence part, such as {@code a whole number from 0 to 60}
 */
record Allowed(String words, Predicate<String> test) {
    static final Allowed YES_OR_NO = new Allowed("true or false", v -> v.equals("true") || v.equals("false"));
    static final Allowed MONTH_AND_DAY = new Allowed("month and day as MM-DD, such as 06-01", Allowed::isMonthDay);
    static final Allowed CODES =
            new Allowed("codes separated by blanks, or nothing", v -> v.isEmpty() || v.matches("[\\w.-]+( [\\w.-]+)*"));
    static final Allowed TEXT = new Allowed("text of up to 4,000 characters", v -> v.length() <= 4000);
    static final Allowed DAY = new Allowed("a date such as 2026-09-01, or nothing", v -> v.isEmpty() || isDay(v));

    static Allowed wholeNumber(int least, int most) {
        return new Allowed("a whole number from " + least + " to " + most, v -> between(v, "-?\\d{1,6}", least, most));
    }

    /** Two numbers, the smaller first. */
    static Allowed span(int least, int most) {
        return new Allowed(
                "two numbers from " + least + " to " + most + ", the smaller first, such as 10-45 or 27.5-80",
                v -> isSpan(v, least, most));
    }

    static Allowed share() {
        return new Allowed("a share from 0 to 1, such as 0.05", v -> between(v, "[01](\\.\\d{1,6})?", 0, 1));
    }

    static Allowed shareAboveNone() {
        Allowed share = share();
        return new Allowed(
                "a share above 0, up to 1, such as 0.01", v -> share.test().test(v) && new BigDecimal(v).signum() > 0);
    }

    static Allowed shareBetween() {
        Allowed share = shareAboveNone();
        return new Allowed(
                "a share above 0 and below 1, such as 0.95",
                v -> share.test().test(v) && new BigDecimal(v).compareTo(BigDecimal.ONE) < 0);
    }

    static Allowed wholeNumberOrNothing(int least, int most) {
        Allowed number = wholeNumber(least, most);
        return new Allowed(
                number.words() + ", or nothing",
                v -> v.isEmpty() || number.test().test(v));
    }

    static Allowed word(String... words) {
        return new Allowed("one of " + String.join(", ", words), java.util.Set.of(words)::contains);
    }

    private static boolean between(String value, String form, int least, int most) {
        return value.matches(form)
                && new BigDecimal(value).compareTo(BigDecimal.valueOf(least)) >= 0
                && new BigDecimal(value).compareTo(BigDecimal.valueOf(most)) <= 0;
    }

    private static boolean isSpan(String value, int least, int most) {
        String number = "\\d{1,4}(\\.\\d{1,2})?";
        if (!value.matches(number + "-" + number)) {
            return false;
        }
        String[] ends = value.split("-");
        return between(ends[0], number, least, most)
                && between(ends[1], number, least, most)
                && new BigDecimal(ends[0]).compareTo(new BigDecimal(ends[1])) < 0;
    }

    private static boolean isMonthDay(String value) {
        try {
            // 29 February would exist one year in four only
            return value.matches("\\d\\d-\\d\\d")
                    && MonthDay.parse("--" + value).isValidYear(2026);
        } catch (DateTimeException e) {
            return false;
        }
    }

    private static boolean isDay(String value) {
        try {
            CalendarText.day(value);
            return true;
        } catch (DateTimeException e) {
            return false;
        }
    }
}
