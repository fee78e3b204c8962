package org.dentary.jaw.drawing;

import static org.dentary.jaw.drawing.JawShapes.crestAcross;
import static org.dentary.jaw.drawing.JawShapes.crestBand;
import static org.dentary.jaw.drawing.JawShapes.crestEdge;
import static org.dentary.jaw.drawing.JawShapes.crestLens;
import static org.dentary.jaw.drawing.JawShapes.crown;
import static org.dentary.jaw.drawing.JawShapes.farEdge;
import static org.dentary.jaw.drawing.JawShapes.frontTeeth;
import static org.dentary.jaw.drawing.JawShapes.gum;
import static org.dentary.jaw.drawing.JawShapes.lowerJaw;
import static org.dentary.jaw.drawing.JawShapes.wall;

import java.awt.Shape;
import java.awt.geom.Path2D;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The drawings of the key, made here from outlines: black lines that read the same in print, on a dark screen and without color.
 * A bold outline is the tooth in question, stripes are dentine, a broken outline is what cannot be seen.
 */
public final class JawDrawings {

    private static final double GUM = 120;
    private static final double[] ROW_X = {30, 76, 126, 196, 264, 338};
    private static final double[] ROW_WIDTH = {40, 44, 62, 62, 68, 88};

    private static final Map<String, JawDrawing> ALL = new LinkedHashMap<>();

    static {
        jawAndRows();
        thirdTeeth();
        sixthTeeth();
        edgesAndDentine();
    }

    private JawDrawings() {}

    /** All drawings, in the order in which the key uses them. */
    public static Collection<JawDrawing> all() {
        return ALL.values();
    }

    /** A drawing by its name. */
    public static Optional<JawDrawing> find(String name) {
        return Optional.ofNullable(ALL.get(name));
    }

    private static void jawAndRows() {
        add(
                "jaw-side",
                "Lower jaw from the side, cheek teeth numbered 1 to 6",
                "A lower jaw with its front to the left. Behind the front teeth and a gap stand six cheek teeth, numbered 1"
                        + " to 6 from the front: 1 to 3 are premolars, 4 to 6 molars. The third and the sixth are drawn"
                        + " bold.",
                660,
                250,
                JawDrawings::jawSide);
        row("row-six", "Six cheek teeth", 6, "All six are through; the sixth, the last, is coming up.");
        row("row-five", "Five cheek teeth", 5, "Five are through; nothing has come up behind the fifth.");
        row("row-four", "Four cheek teeth", 4, "Four are through; nothing has come up behind the fourth.");
        row("row-three", "Three cheek teeth", 3, "Three are through; nothing has come up behind the third.");
        add(
                "row-front-only",
                "The back of the row is hidden",
                "Three cheek teeth can be seen; the cheek hides the rest, and a question mark stands where the back teeth"
                        + " would be.",
                450,
                170,
                JawDrawings::frontOnly);
    }

    private static void thirdTeeth() {
        third(
                "third-three-cusps",
                "Third tooth with three cusps",
                "The third tooth, bold, has three cusps in a row and is as worn as its neighbors: the milk tooth.",
                pen -> pen.bold(crown(106, GUM, 94, true, 50, 54, 48)));
        third(
                "third-two-cusps",
                "Third tooth with two cusps",
                "The third tooth, bold, has two cusps: the permanent tooth.",
                pen -> pen.bold(crown(116, GUM, 74, false, 62, 56)));
        third(
                "third-loose-cap",
                "Loose milk cap on a rising tooth",
                "A thin cap with three cusps sits loose on a two-cusped tooth that is rising below it; a gap shows between"
                        + " cap and tooth.",
                JawDrawings::looseCap);
        third(
                "third-erupting",
                "Third tooth still coming up",
                "The third tooth, bold, has two sharp cusps that stand well below its neighbors.",
                pen -> {
                    pen.bold(crown(118, GUM, 70, false, 30, 25));
                    pen.arrow(153, 76, 153, 50);
                });
        third(
                "third-full",
                "Third tooth fully up",
                "The third tooth, bold, has two cusps that stand as high as its neighbors.",
                pen -> {
                    pen.bold(crown(116, GUM, 74, false, 62, 56));
                    level(pen, 12, 300, 54);
                });
    }

    private static void sixthTeeth() {
        sixth(
                "sixth-erupting",
                "Sixth tooth still coming up",
                "The sixth tooth, bold, is the last. Its front cusps are up; its rear cusp is still low in the gum.",
                pen -> {
                    pen.bold(crown(112, GUM, 130, false, new double[] {0.38, 0.36, 0.26}, new double[] {58, 44, 14}));
                    pen.arrow(226, 84, 226, 60);
                });
        sixth(
                "sixth-full",
                "Sixth tooth fully up",
                "The sixth tooth, bold, is the last. All three cusps are up; the rear cusp is the smallest.",
                pen -> {
                    pen.bold(crown(112, GUM, 130, false, new double[] {0.38, 0.36, 0.26}, new double[] {66, 62, 46}));
                    level(pen, 12, 270, 54);
                });
    }

    private static void edgesAndDentine() {
        add(
                "edge-sharp",
                "Sharp edge",
                "A crest cut across: its two sides meet in a sharp edge of enamel.",
                300,
                200,
                pen -> {
                    pen.bold(crestAcross(false));
                    pen.thin(gum(20, 280, 180));
                });
        add(
                "edge-rounded",
                "Rounded edge",
                "A crest cut across: its top is worn round and low, and striped dentine shows between the enamel sides.",
                300,
                200,
                JawDrawings::roundedEdge);
        crest(
                "dentine-none",
                "No dentine",
                "A molar from the tongue side. The edge of its cusps is one sharp line of enamel; no stripe of dentine"
                        + " shows.",
                true,
                pen -> pen.bold(crestEdge(0, true)));
        crest(
                "dentine-trace",
                "A trace of dentine",
                "A molar from the tongue side. The edge is sharp; a short, thin stripe of dentine shows on top of one cusp.",
                true,
                pen -> {
                    pen.bold(crestEdge(0, true));
                    pen.stripes(crestLens());
                });
        crest(
                "dentine-line",
                "A defined line of dentine",
                "A molar from the tongue side. The cusps are worn lower, and a striped line of dentine runs along the whole"
                        + " edge between two lines of enamel.",
                false,
                pen -> {
                    pen.bold(crestEdge(0, false));
                    pen.plain(crestEdge(22, false));
                    pen.stripes(crestBand(5, 17, false));
                });
    }

    private static void add(
            String name, String title, String description, int width, int height, Consumer<Pen> painter) {
        ALL.put(
                name,
                new JawDrawing(name, title, description, width, height, graphics -> painter.accept(new Pen(graphics))));
    }

    private static void jawSide(Pen pen) {
        pen.plain(lowerJaw());
        pen.thin(frontTeeth());
        double x = 216;
        double[] widths = {38, 40, 48, 50, 54, 62};
        for (int position = 1; position <= 6; position++) {
            Shape tooth = tooth(position, x, 150, widths[position - 1], 0.9);
            if (position == 3 || position == 6) {
                pen.bold(tooth);
            } else {
                pen.plain(tooth);
            }
            pen.numeral(position, x + widths[position - 1] / 2 - 7, 172, 24);
            x += widths[position - 1];
        }
    }

    private static void row(String name, String title, int count, String what) {
        add(name, title, "A row of cheek teeth from the side, numbered from the front. " + what, 450, 170, pen -> {
            for (int position = 1; position <= count; position++) {
                double x = ROW_X[position - 1];
                double width = ROW_WIDTH[position - 1];
                Shape tooth = position == 6
                        ? crown(x, GUM, width, false, new double[] {0.38, 0.36, 0.26}, new double[] {46, 34, 12})
                        : tooth(position, x, GUM, width, 1);
                if (position == count) {
                    pen.bold(tooth);
                } else {
                    pen.plain(tooth);
                }
                pen.numeral(position, x + width / 2 - 7, 136, 24);
            }
            pen.thin(gum(10, 440, GUM));
        });
    }

    private static void frontOnly(Pen pen) {
        for (int position = 1; position <= 3; position++) {
            pen.plain(tooth(position, ROW_X[position - 1], GUM, ROW_WIDTH[position - 1], 1));
            pen.numeral(position, ROW_X[position - 1] + ROW_WIDTH[position - 1] / 2 - 7, 136, 24);
        }
        pen.thin(gum(10, 200, GUM));
        Path2D cheek = new Path2D.Double();
        cheek.moveTo(206, 20);
        cheek.curveTo(186, 60, 190, 120, 212, 160);
        cheek.lineTo(440, 160);
        cheek.lineTo(440, 20);
        cheek.closePath();
        pen.broken(cheek);
        pen.questionMark(305, 58, 64);
    }

    private static void third(String name, String title, String description, Consumer<Pen> tooth) {
        add(name, title, description, 310, 170, pen -> {
            pen.plain(crown(34, GUM, 66, true, 50, 40));
            pen.plain(crown(206, GUM, 84, true, 58, 56));
            tooth.accept(pen);
            pen.thin(gum(10, 300, GUM));
            pen.numeral(2, 60, 136, 24);
            pen.numeral(3, 146, 136, 24);
            pen.numeral(4, 241, 136, 24);
        });
    }

    private static void looseCap(Pen pen) {
        pen.bold(crown(118, GUM, 70, false, 30, 25));
        Path2D cap = new Path2D.Double();
        cap.moveTo(104, 78);
        cap.lineTo(104, 62);
        cap.quadTo(120, 34, 136, 56);
        cap.quadTo(152, 30, 168, 54);
        cap.quadTo(186, 32, 202, 58);
        cap.lineTo(202, 76);
        cap.quadTo(178, 62, 153, 72);
        cap.quadTo(128, 62, 104, 78);
        cap.closePath();
        pen.bold(cap);
    }

    private static void sixth(String name, String title, String description, Consumer<Pen> tooth) {
        add(name, title, description, 290, 170, pen -> {
            pen.plain(crown(24, GUM, 82, true, 58, 56));
            tooth.accept(pen);
            pen.thin(gum(10, 270, GUM));
            pen.numeral(5, 58, 136, 24);
            pen.numeral(6, 166, 136, 24);
        });
    }

    private static void level(Pen pen, double fromX, double toX, double y) {
        Path2D line = new Path2D.Double();
        line.moveTo(fromX, y);
        line.lineTo(toX, y);
        pen.broken(line);
    }

    private static void roundedEdge(Pen pen) {
        pen.bold(crestAcross(true));
        Path2D core = new Path2D.Double();
        core.moveTo(110, 180);
        core.quadTo(118, 120, 126, 87);
        core.quadTo(150, 80, 174, 87);
        core.quadTo(182, 120, 190, 180);
        core.closePath();
        pen.stripes(core);
        pen.thin(gum(20, 280, 180));
    }

    private static void crest(String name, String title, String description, boolean sharp, Consumer<Pen> crests) {
        add(name, title, description, 300, 200, pen -> {
            pen.thin(farEdge());
            pen.plain(wall(sharp));
            crests.accept(pen);
            pen.thin(gum(10, 290, 180));
        });
    }

    private static Shape tooth(int position, double x, double gum, double width, double scale) {
        double[][] cusps = {{38, 30}, {46, 36}, {52, 48}, {58, 54}, {58, 54}, {58, 54, 40}};
        double[] heights =
                Arrays.stream(cusps[position - 1]).map(height -> height * scale).toArray();
        return position == 6
                ? crown(x, gum, width, false, new double[] {0.38, 0.36, 0.26}, heights)
                : crown(x, gum, width, true, heights);
    }
}
