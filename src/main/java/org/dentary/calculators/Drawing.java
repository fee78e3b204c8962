package org.dentary.calculators;

import java.util.List;

/** What a calculator draws, without how. */
public sealed interface Drawing {
    /** What the drawing shows, for those who cannot see it. */
    String words();

    /**
     * Intervals beneath each other on one line.
     *
     * @param axis what is along the line
     * @param logarithmic true for ratios
     */
    record Intervals(String words, String axis, boolean logarithmic, List<Interval> intervals) implements Drawing {}

    /**
     * One interval; what is null is not drawn, what is unbounded runs to the edge.
     *
     * @param beside a second value to mark on the same line, or null
     */
    record Interval(String label, Double estimate, Double lower, Double upper, Double beside) {
        public Interval(String label, Double estimate, Double lower, Double upper) {
            this(label, estimate, lower, upper, null);
        }
    }

    /**
     * Curves and points over a common axis, probability or proportion upwards.
     *
     * @param marks values on the lower axis to mark with a line and a word
     */
    record Curves(String words, String across, String up, List<Curve> curves, List<Mark> marks) implements Drawing {}

    /** One curve; {@code line} joins its points. */
    record Curve(String label, boolean line, boolean dots, List<Point> points) {}

    /** One point, with limits where it has them. */
    record Point(double x, double y, Double lower, Double upper) {
        public Point(double x, double y) {
            this(x, y, null, null);
        }
    }

    /** A line to mark. */
    record Mark(String label, double x) {}
}
