package org.dentary.codes;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.List;

/**
 * The eight characters that the labels of one kit share: one animal's set of matching labels. They are random, carry no
 * meaning, and begin with a letter so that no spreadsheet takes a code for a number.
 *
 * @param value eight characters of the label alphabet, the first a letter
 */
public record KitStem(@JsonValue String value) implements Comparable<KitStem> {

    /** The number of characters of a kit. */
    public static final int LENGTH = 8;

    /** @throws NotACode where the value is anything but eight characters of the alphabet, the first a letter */
    public KitStem {
        requireAlphabet(value, value);
        if (value.length() != LENGTH) {
            throw new NotACode(
                    value,
                    0,
                    "",
                    "a kit has " + LENGTH + " characters, this has " + value.length() + ". Scan or type it again.");
        }
        requireLetterFirst(value, value);
    }

    /**
     * The kit that a person or scanner typed, whether as its eight characters or as the ten of any of its labels.
     * Forgiven are case, spaces, hyphens, O for 0, I for 1 and a scanner's prefix and suffix.
     *
     * @throws NotACode where it is neither; eight characters carry no check, so prefer a whole label
     */
    @JsonCreator
    public static KitStem parse(String typed) {
        String text = TypedText.forgive(typed == null ? "" : typed);
        return text.length() == LENGTH
                ? new KitStem(requireLetterFirst(requireAlphabet(text, typed), typed))
                : LabelCode.parse(typed).kit();
    }

    /** The code of this kit's label for a part. */
    public LabelCode label(Part part) {
        return LabelCode.of(this, part);
    }

    /** The codes of this kit's labels for some parts, in the order given. */
    public List<LabelCode> labels(Part... parts) {
        return Arrays.stream(parts).map(this::label).toList();
    }

    /** The kit as it is printed, 4-4. */
    public String grouped() {
        return value.substring(0, 4) + "-" + value.substring(4);
    }

    @Override
    public int compareTo(KitStem other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }

    static String requireAlphabet(String text, String given) {
        for (int i = 0; i < text.length(); i++) {
            if (CheckSystem.LABELS.alphabet().indexOf(text.charAt(i)) < 0) {
                throw Foreign.refuse(text, given, i);
            }
        }
        return text;
    }

    static String requireLetterFirst(String text, String given) {
        if (Character.isDigit(text.charAt(0))) {
            throw new NotACode(
                    given,
                    1,
                    text.substring(0, 1),
                    "character 1 is the digit %s, but every code begins with a letter. Look at the first character again."
                            .formatted(text.charAt(0)));
        }
        return text;
    }
}
