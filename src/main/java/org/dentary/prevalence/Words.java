package org.dentary.prevalence;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.dentary.statistics.Percent;

/** Codes and figures as people read them. */
public final class Words {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("MMM d, uuuu", Locale.US);
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMMM uuuu", Locale.US);

    private Words() {}

    /** A day: "Nov 25, 2026". */
    public static String day(LocalDate day) {
        return DAY.format(day);
    }

    /** {@code 2026-11} as "November 2026"; what is no month as {@link #of} says it. */
    public static String month(String month) {
        return month.matches("\\d{4}-\\d\\d") ? MONTH.format(YearMonth.parse(month)) : of(month);
    }

    /** {@code HUNTER_HARVEST} as "Hunter harvest"; a code that is not of that form stays as it is. */
    public static String of(String code) {
        if (!code.matches("[A-Z]+(_[A-Z]+)*")) {
            return code;
        }
        String words = code.replace('_', ' ').toLowerCase(Locale.ROOT);
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    /** A share as {@link Percent} prints it; empty for none. */
    public static String percent(Double share, int n) {
        if (share == null) {
            return "";
        }
        return Percent.of(share, n);
    }
}
