package org.dentary.codes;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The ten characters of a label: eight of its kit, one naming the part, one check character after ISO 7064's pure
 * system with modulus 29 and radix 2. Identical copies of a label share its code. The animal is never derived from the
 * characters; which kit a label is bound to is looked up.
 *
 * @param value the ten characters, upper case, without hyphens
 */
public record LabelCode(@JsonValue String value) implements Comparable<LabelCode> {

    /** The number of characters of a code. */
    public static final int LENGTH = 10;

    private static final int MOST_SLIPS = 3;

    /**
     * Takes a code in its kept form only; {@link #parse} is for what people type.
     *
     * @throws NotACode where the value is anything else
     */
    public LabelCode {
        require(value, value);
    }

    /**
     * The code that a person or scanner typed. Forgiven are case, spaces, hyphens, O for 0, I for 1 and a scanner's
     * prefix and suffix characters.
     *
     * @param typed anything; null counts as nothing typed
     * @throws NotACode naming the character that looks wrong, where one can be named
     */
    @JsonCreator
    public static LabelCode parse(String typed) {
        String given = typed == null ? "" : typed;
        return new LabelCode(require(TypedText.forgive(given), given));
    }

    /** The code of a kit's label for a part. */
    public static LabelCode of(KitStem kit, Part part) {
        String payload = kit.value() + part.character();
        return new LabelCode(payload + CheckSystem.LABELS.check(payload));
    }

    /** The kit this label was printed for. */
    public KitStem kit() {
        return new KitStem(value.substring(0, KitStem.LENGTH));
    }

    /** The part this label was printed for. */
    public Part part() {
        return Part.of(value.charAt(KitStem.LENGTH)).orElseThrow();
    }

    /** The code as it is printed, 4-4-2. */
    public String grouped() {
        return value.substring(0, 4) + "-" + value.substring(4, 8) + "-" + value.substring(8);
    }

    @Override
    public int compareTo(LabelCode other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }

    private static String require(String text, String given) {
        requireLength(text, given);
        KitStem.requireAlphabet(text, given);
        if (!CheckSystem.LABELS.matches(text)) {
            throw checkFails(text, given);
        }
        KitStem.requireLetterFirst(text, given);
        if (Part.of(text.charAt(KitStem.LENGTH)).isEmpty()) {
            throw new NotACode(
                    given,
                    KitStem.LENGTH + 1,
                    text.substring(KitStem.LENGTH, KitStem.LENGTH + 1),
                    "character 9 names the part, and %s names none. Scan or type it again."
                            .formatted(text.charAt(KitStem.LENGTH)));
        }
        return text;
    }

    private static void requireLength(String text, String given) {
        if (text.isEmpty()) {
            throw new NotACode(given, 0, "", "nothing was scanned or typed. A code has 10 characters.");
        }
        if (text.length() == KitStem.LENGTH) {
            throw new NotACode(
                    given, 0, "", "it has 8 characters, those of a kit; a label has 10. Type the last two as well.");
        }
        if (text.length() != LENGTH) {
            int off = Math.abs(LENGTH - text.length());
            throw new NotACode(
                    given,
                    0,
                    "",
                    "it has %d character%s, a code has 10: %d %s. Scan or type it again."
                            .formatted(
                                    text.length(),
                                    text.length() == 1 ? "" : "s",
                                    off,
                                    (off == 1 ? "is " : "are ") + (text.length() < LENGTH ? "missing" : "too many")));
        }
    }

    private static NotACode checkFails(String text, String given) {
        List<Slip> slips = Slip.explaining(text, LabelCode::isCode);
        if (slips.isEmpty() || slips.size() > MOST_SLIPS) {
            return new NotACode(
                    given,
                    0,
                    "",
                    "the check character does not fit: one or more characters are wrong. Scan it, or compare all ten.");
        }
        Slip only = slips.get(0);
        boolean named = slips.size() == 1;
        return new NotACode(
                given,
                named ? only.position() : 0,
                named ? only.typed() : "",
                slips.stream()
                        .map(Slip::hint)
                        .collect(Collectors.joining(
                                " Or ",
                                "the check character does not fit. Look again at ",
                                " If the label agrees with what you typed, scan it.")),
                slips);
    }

    private static boolean isCode(String text) {
        return CheckSystem.LABELS.matches(text)
                && Character.isLetter(text.charAt(0))
                && Part.of(text.charAt(KitStem.LENGTH)).isPresent();
    }
}
