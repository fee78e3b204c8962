package org.dentary.prevalence;

import java.util.Locale;

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

    /** A share as a percentage with no more digits than n carries: none below 30, one below 1,000, else two. */
    public static String percent(Double share, int n) {
        if (share == null) {
            return "";
        }
        int digits = n < 30 ? 0 : n < 1000 ? 1 : 2;
        return String.format(Locale.ROOT, "%." + digits + "f %%", 100 * share);
    }
}
