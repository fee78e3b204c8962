package org.dentary.codes;

import java.util.List;
import java.util.regex.Pattern;

/**
 * What a person or a scanner typed, brought to the form in which codes are kept. Forgiven are: lower case, spaces,
 * hyphens and dashes, O for 0, I for 1, control and invisible characters that a scanner sends before or after (tab,
 * return, STX, ETX, GS), and the symbology identifier that ISO/IEC 15424 lets it send first, such as {@code ]C0}.
 */
public final class TypedText {

    private static final Pattern SYMBOLOGY_IDENTIFIER = Pattern.compile("^\\][A-Za-z][0-9A-Za-z]");
    private static final String DASHES = "-\u2010\u2011\u2012\u2013\u2014\u2212_";
    private static final int LONGEST_ECHO = 40;

    /** A code in the groups in which it is printed, 4-4-2, blanks between them. */
    private static final Pattern GROUPED = Pattern.compile(
            "(?<![0-9A-Za-z-])([0-9A-Za-z]{4})\\h+([0-9A-Za-z]{4})\\h+([0-9A-Za-z]{2})(?![0-9A-Za-z-])");

    private static final Pattern PARTS = Pattern.compile("[\\s,;]+");

    private TypedText() {}

    /**
     * The codes in a text of several, as typed: parted by lines, blanks, commas or semicolons; one that was typed in its
     * printed groups stays one.
     *
     * @param typed null counts as nothing typed
     * @return in the order typed; empty parts are left out
     */
    public static List<String> several(String typed) {
        String together = GROUPED.matcher(typed == null ? "" : typed).replaceAll("$1-$2-$3");
        return PARTS.splitAsStream(together)
                .map(part -> part.replaceAll("\\p{Cntrl}", ""))
                .map(part -> SYMBOLOGY_IDENTIFIER.matcher(part).replaceFirst(""))
                .filter(part -> !part.isBlank())
                .toList();
    }

    /** The typed text without what is forgiven; a foreign character stays, for the reader to name. */
    static String forgive(String typed) {
        StringBuilder visible = new StringBuilder();
        typed.chars().filter(c -> !isInvisible((char) c)).forEach(c -> visible.append((char) c));
        String text = SYMBOLOGY_IDENTIFIER.matcher(visible).replaceFirst("");
        StringBuilder kept = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            if (DASHES.indexOf(text.charAt(i)) < 0) {
                kept.append(lookAlike(upper(text.charAt(i))));
            }
        }
        return kept.toString();
    }

    /** The typed text as it can be shown in a message: no control characters, at most 40 characters. */
    public static String shown(String typed) {
        String visible = typed.replaceAll("\\p{C}", "").strip();
        return visible.length() <= LONGEST_ECHO ? visible : visible.substring(0, LONGEST_ECHO) + "...";
    }

    private static boolean isInvisible(char c) {
        return Character.isWhitespace(c)
                || Character.isSpaceChar(c)
                || Character.isISOControl(c)
                || Character.getType(c) == Character.FORMAT;
    }

    /** Upper case of the 26 letters alone: other scripts have letters whose upper case is one of ours. */
    private static char upper(char c) {
        return c >= 'a' && c <= 'z' ? (char) (c - 'a' + 'A') : c;
    }

    private static char lookAlike(char c) {
        return switch (c) {
            case 'O' -> '0';
            case 'I' -> '1';
            default -> c;
        };
    }
}
