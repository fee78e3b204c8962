package org.dentary.prevalence;

import java.util.Locale;
import org.dentary.statistics.Percent;

/** Codes and figures as people read them. */
public final class Words {
    private Words() {}

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
