package org.dentary.jaw.drawing;

import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/** Outlines of teeth, gum and bone, drawn freely after the anatomy; lengths are in drawing units, y downwards. */
final class JawShapes {

    private JawShapes() {}

    /**
     * A crown from the side, standing on the gum.
     *
     * @param x left end at the gum
     * @param gum height of the gum
     * @param cuspHeights height of each cusp above the gum, from the front
     * @param round whether the cusps are worn round instead of sharp
     */
    static Shape crown(double x, double gum, double width, boolean round, double... cuspHeights) {
        double[] shares = new double[cuspHeights.length];
        Arrays.fill(shares, 1.0 / cuspHeights.length);
        return crown(x, gum, width, round, shares, cuspHeights);
    }

    /** As above, each cusp taking its own share of the width. */
    static Shape crown(double x, double gum, double width, boolean round, double[] shares, double[] cuspHeights) {
        Path2D path = new Path2D.Double();
        path.moveTo(x + 2, gum);
        double left = x;
        for (int i = 0; i < cuspHeights.length; i++) {
            double step = width * shares[i];
            double top = gum - cuspHeights[i];
            double valley = gum - Math.min(cuspHeights[i], i + 1 < cuspHeights.length ? cuspHeights[i + 1] : 0) * 0.55;
            if (i == 0) {
                path.quadTo(left - 2, gum - cuspHeights[i] * 0.5, left + step * 0.12, top + cuspHeights[i] * 0.28);
            }
            double middle = left + step * 0.5;
            double right = left + step;
            double end = i + 1 < cuspHeights.length ? valley : top + cuspHeights[i] * 0.3;
            if (round) {
                path.curveTo(middle - step * 0.3, top - 2, middle + step * 0.3, top - 2, right, end);
            } else {
                path.lineTo(middle, top);
                path.lineTo(right, end);
            }
            left = right;
        }
        path.quadTo(left + 2, gum - cuspHeights[cuspHeights.length - 1] * 0.4, x + width - 2, gum);
        path.closePath();
        return path;
    }

    /** The gum between two points, a shallow wave. */
    static Shape gum(double fromX, double toX, double y) {
        Path2D path = new Path2D.Double();
        path.moveTo(fromX, y);
        for (double x = fromX; x + 1 < toX; x += 24) {
            path.quadTo(x + 12, y + 5, Math.min(x + 24, toX), y);
        }
        return path;
    }

    /** The lower jaw from its left side, front to the left. */
    static Shape lowerJaw() {
        Path2D path = new Path2D.Double();
        path.moveTo(40, 176);
        path.curveTo(70, 158, 110, 160, 170, 168);
        path.curveTo(190, 168, 196, 150, 214, 150);
        path.lineTo(508, 150);
        path.curveTo(530, 146, 540, 120, 552, 66);
        path.curveTo(556, 40, 572, 22, 586, 30);
        path.curveTo(592, 44, 586, 62, 594, 72);
        path.curveTo(604, 66, 624, 62, 630, 74);
        path.curveTo(630, 90, 612, 96, 614, 118);
        path.curveTo(620, 160, 634, 190, 612, 214);
        path.curveTo(590, 232, 560, 214, 520, 216);
        path.curveTo(440, 226, 330, 230, 240, 216);
        path.curveTo(170, 206, 90, 206, 46, 194);
        path.closePath();
        return path;
    }

    /** Four front teeth leaning forward. */
    static Shape frontTeeth() {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < 4; i++) {
            double x = 42 + i * 13;
            path.moveTo(x, 176 - i * 4);
            path.curveTo(x - 14, 166 - i * 4, x - 24, 150 - i * 3, x - 20, 142 - i * 3);
            path.curveTo(x - 8, 140 - i * 3, x + 4, 154 - i * 3, x + 11, 171 - i * 4);
        }
        return path;
    }

    /**
     * The tongue-side edge of a two-cusped molar, seen from that side and a little from above, left to right.
     *
     * @param lift how far the edge lies above the near edge of enamel
     * @param sharp whether the cusps are pointed; worn ones are lower and round
     */
    static Path2D crestEdge(double lift, boolean sharp) {
        double peak = (sharp ? 62 : 82) - lift;
        double valley = 128 - lift;
        double side = 120 - lift / 2;
        double soft = sharp ? 6 : 26;
        Path2D path = new Path2D.Double();
        path.moveTo(22 + lift / 2, side);
        for (int x : new int[] {86, 214}) {
            path.curveTo(x - 44, peak + 34, x - soft - 8, peak, x, peak);
            path.curveTo(
                    x + soft + 8, peak, x + 44, peak + 34, x == 86 ? 150 : 278 - lift / 2, x == 86 ? valley : side);
        }
        return path;
    }

    /** The strip between two edges of the crest. */
    static Shape crestBand(double fromLift, double toLift, boolean sharp) {
        Path2D near = crestEdge(fromLift, sharp);
        Path2D band = new Path2D.Double(near);
        band.append(reversed(crestEdge(toLift, sharp)), true);
        band.closePath();
        return band;
    }

    /** A short lens on top of the second cusp. */
    static Shape crestLens() {
        Path2D path = new Path2D.Double();
        path.moveTo(184, 84);
        path.quadTo(214, 22, 244, 84);
        path.quadTo(214, 54, 184, 84);
        path.closePath();
        return path;
    }

    /** The wall of the molar below its tongue-side edge, down to the gum. */
    static Shape wall(boolean sharp) {
        Path2D path = new Path2D.Double();
        path.moveTo(30, 180);
        path.quadTo(16, 150, 22, 120);
        path.append(crestEdge(0, sharp), true);
        path.quadTo(284, 150, 270, 180);
        path.moveTo(150, 128);
        path.lineTo(150, 160);
        return path;
    }

    /** The cheek-side edge behind. */
    static Shape farEdge() {
        Path2D path = new Path2D.Double();
        path.moveTo(40, 92);
        path.curveTo(64, 56, 78, 30, 94, 30);
        path.curveTo(110, 30, 132, 60, 152, 72);
        path.curveTo(174, 60, 194, 30, 210, 30);
        path.curveTo(226, 30, 240, 56, 262, 92);
        return path;
    }

    private static Path2D reversed(Path2D path) {
        List<double[]> points = new ArrayList<>();
        double[] at = new double[6];
        for (PathIterator walk = path.getPathIterator(null); !walk.isDone(); walk.next()) {
            int kind = walk.currentSegment(at);
            for (int i = 0; i < (kind == PathIterator.SEG_CUBICTO ? 6 : 2); i += 2) {
                points.add(new double[] {at[i], at[i + 1]});
            }
        }
        Collections.reverse(points);
        Path2D back = new Path2D.Double();
        back.moveTo(points.get(0)[0], points.get(0)[1]);
        for (int i = 1; i + 2 < points.size(); i += 3) {
            back.curveTo(
                    points.get(i)[0],
                    points.get(i)[1],
                    points.get(i + 1)[0],
                    points.get(i + 1)[1],
                    points.get(i + 2)[0],
                    points.get(i + 2)[1]);
        }
        return back;
    }

    /** A crest cut across: enamel on both sides of a dentine core. */
    static Shape crestAcross(boolean round) {
        Path2D path = new Path2D.Double();
        path.moveTo(40, 180);
        if (round) {
            path.curveTo(66, 140, 84, 84, 150, 82);
            path.curveTo(216, 84, 234, 140, 260, 180);
        } else {
            path.lineTo(146, 36);
            path.lineTo(154, 36);
            path.lineTo(260, 180);
        }
        return path;
    }
}
