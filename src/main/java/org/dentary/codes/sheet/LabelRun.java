package org.dentary.codes.sheet;

import java.util.Map;
import org.dentary.codes.Part;

/**
 * How a run of labels is printed.
 *
 * @param startAt the first label to use on the first sheet, from 1, counted along the rows
 * @param copies how many identical labels of each part; a part that is not named gets one, 0 leaves it out
 * @param rightMm how far everything is shifted right (left where below 0) to meet the labels, at most 10 mm
 * @param downMm how far everything is shifted down (up where below 0), at most 10 mm
 */
public record LabelRun(int startAt, Map<Part, Integer> copies, double rightMm, double downMm) {

    /** From the first label, one of each, not shifted. */
    public static final LabelRun PLAIN = new LabelRun(1, Map.of(), 0, 0);

    private static final int MOST_COPIES = 50;
    private static final double MOST_SHIFT_MM = 10;

    /** @throws IllegalArgumentException where a number is outside its range */
    public LabelRun {
        copies = Map.copyOf(copies);
        if (startAt < 1) {
            throw new IllegalArgumentException("The first label to use is 1 or more, not " + startAt + ".");
        }
        copies.forEach((part, count) -> {
            if (count < 0 || count > MOST_COPIES) {
                throw new IllegalArgumentException(
                        "Copies of " + part + " are 0 to " + MOST_COPIES + ", not " + count + ".");
            }
        });
        requireShift(rightMm);
        requireShift(downMm);
    }

    /** The same run beginning at another label of a part-used sheet. */
    public LabelRun startingAt(int label) {
        return new LabelRun(label, copies, rightMm, downMm);
    }

    /** The same run with other numbers of copies. */
    public LabelRun withCopies(Map<Part, Integer> other) {
        return new LabelRun(startAt, other, rightMm, downMm);
    }

    /** The same run shifted. */
    public LabelRun shifted(double right, double down) {
        return new LabelRun(startAt, copies, right, down);
    }

    int copiesOf(Part part) {
        return copies.getOrDefault(part, 1);
    }

    private static void requireShift(double millimetres) {
        if (!(Math.abs(millimetres) <= MOST_SHIFT_MM)) {
            throw new IllegalArgumentException("A shift is at most 10 mm either way, not " + millimetres + ".");
        }
    }
}
