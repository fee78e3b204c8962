package org.dentary.custody.handover;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dentary.ledger.Redacted;
import org.dentary.platform.problem.InvalidInput;

/**
 * A signature drawn on the screen: strokes on a field of 600 by 200 units, as the path commands M and L of SVG with whole
 * numbers, such as {@code M10 20L15 22L30 40}. Its ink stays outside the ledger; a chain holds only the salted digest.
 */
public final class Signature {
    /** Width of the field in units. */
    public static final int WIDTH = 600;
    /** Height of the field in units. */
    public static final int HEIGHT = 200;

    private static final int LONGEST = 20_000;
    private static final Pattern STEP = Pattern.compile("\\G([ML])(\\d{1,3}) (\\d{1,3})");

    private Signature() {}

    /**
     * The strokes for the ledger, under a fresh salt; null for none.
     *
     * @throws InvalidInput if it is anything but strokes on the field, or has more than 20,000 characters
     */
    static Redacted redacted(String strokes) {
        if (strokes == null || strokes.isBlank()) {
            return null;
        }
        String plain = strokes.strip();
        if (plain.length() > LONGEST || !isDrawn(plain)) {
            throw InvalidInput.field(
                    "signature",
                    "NO_SIGNATURE",
                    "a signature is strokes such as M10 20L30 40 on a field of " + WIDTH + " by " + HEIGHT + ", up to "
                            + LONGEST + " characters; clear it and sign again, or leave it out");
        }
        return Redacted.of(plain);
    }

    private static boolean isDrawn(String strokes) {
        Matcher step = STEP.matcher(strokes);
        int end = 0;
        boolean drawn = false;
        while (step.find()) {
            boolean moves = step.group(1).equals("M");
            if (end == 0 && !moves
                    || Integer.parseInt(step.group(2)) > WIDTH
                    || Integer.parseInt(step.group(3)) > HEIGHT) {
                return false;
            }
            drawn |= !moves;
            end = step.end();
        }
        return drawn && end == strokes.length();
    }
}
