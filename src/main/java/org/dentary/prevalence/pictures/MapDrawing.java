package org.dentary.prevalence.pictures;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Map;
import org.dentary.prevalence.chart.ChartInks;
import org.dentary.prevalence.detection.UnitChance;
import org.dentary.prevalence.pictures.Picture.Plate;

/** Draws outlines, hatching, numbers and the key below. */
final class MapDrawing {
    private static final int MARGIN = 12;
    private static final int HIGHEST = 620;
    private static final int PITCH = 9;
    private static final double[] STRIPE = {0, 1, 2.2, 3.8, 6};
    private static final int KEY_ROW = 24;

    private final Map<String, UnitChance> units;
    private final List<Outline> outlines;
    private final Shading shading;
    private final ChartInks inks;
    private final boolean narrow;

    MapDrawing(Map<String, UnitChance> units, List<Outline> outlines, Shading shading, ChartInks inks, boolean narrow) {
        this.units = units;
        this.outlines = outlines;
        this.shading = shading;
        this.inks = inks;
        this.narrow = narrow;
    }

    Plate plate() {
        int width = narrow ? Plots.NARROW : Plots.WIDE;
        if (outlines.isEmpty()) {
            return new Plate(width, 40, canvas -> {
                pen(canvas, inks.lettering());
                canvas.drawString("No unit has a boundary in the plan.", MARGIN, 24);
            });
        }
        Projection.Fitted fitted = Projection.fit(outlines, width, HIGHEST, MARGIN);
        int key = KEY_ROW * (narrow ? 6 : 3) + MARGIN;
        return new Plate(width, fitted.height() + key, canvas -> {
            outlines.forEach(outline -> unit(canvas, outline, outline.on(fitted.projection())));
            outlines.forEach(outline -> label(canvas, outline, outline.on(fitted.projection())));
            key(canvas, fitted.height() + MARGIN, width);
        });
    }

    private void pen(Graphics2D canvas, Font font) {
        canvas.setPaint(inks.ink());
        canvas.setFont(font);
        canvas.setStroke(new BasicStroke(1));
    }

    private void unit(Graphics2D canvas, Outline outline, Path2D path) {
        UnitChance unit = units.get(outline.unit());
        hatch(canvas, path, shading.level(unit));
        canvas.setPaint(inks.ink());
        canvas.setStroke(new BasicStroke(unit.detected() > 0 ? 4 : 1.2f));
        canvas.draw(path);
    }

    /** Stripes from lower left to upper right within a shape, wider by level; nothing at level 0. */
    private void hatch(Graphics2D canvas, Shape shape, int level) {
        if (level == 0) {
            return;
        }
        Rectangle2D around = shape.getBounds2D();
        Path2D.Double stripes = new Path2D.Double();
        double reach = around.getWidth() + around.getHeight();
        double first = Math.floor((around.getX() + around.getY()) / PITCH) * PITCH;
        for (double at = first; at < around.getX() + around.getY() + reach; at += PITCH) {
            double half = STRIPE[level] / 2;
            double low = around.getY() - 1;
            double high = around.getMaxY() + 1;
            stripes.moveTo(at - half - low, low);
            stripes.lineTo(at + half - low, low);
            stripes.lineTo(at + half - high, high);
            stripes.lineTo(at - half - high, high);
            stripes.closePath();
        }
        Area within = new Area(shape);
        within.intersect(new Area(stripes));
        canvas.setPaint(inks.series(0));
        canvas.fill(within);
    }

    private void label(Graphics2D canvas, Outline outline, Path2D path) {
        UnitChance unit = units.get(outline.unit());
        Font bold = inks.lettering().deriveFont(Font.BOLD, narrow ? 11f : 13f);
        Font plain = inks.lettering().deriveFont(narrow ? 11f : 13f);
        String value = shading.told(unit);
        FontMetrics head = canvas.getFontMetrics(bold);
        FontMetrics body = canvas.getFontMetrics(plain);
        double width = Math.max(head.stringWidth(unit.unit()), body.stringWidth(value)) + 8;
        double height = head.getHeight() + body.getHeight() + 2;
        Point2D.Double at = inside(path);
        canvas.setPaint(inks.ground());
        canvas.fill(new Rectangle2D.Double(at.x - width / 2, at.y - height / 2, width, height));
        pen(canvas, bold);
        canvas.drawString(unit.unit(), (float) (at.x - head.stringWidth(unit.unit()) / 2.0), (float) (at.y - 3));
        canvas.setFont(plain);
        canvas.drawString(value, (float) (at.x - body.stringWidth(value) / 2.0), (float) (at.y + body.getAscent() - 1));
        if (unit.detected() > 0) {
            canvas.setPaint(inks.series(1));
            canvas.fill(AffineTransform.getTranslateInstance(at.x, at.y - height / 2 - 8)
                    .createTransformedShape(Plots.diamond()));
        }
    }

    /** A point well inside: the middle of the widest stretch on the level of the middle. */
    static Point2D.Double inside(Path2D path) {
        Rectangle2D around = path.getBounds2D();
        double y = around.getCenterY();
        double best = -1;
        double at = around.getCenterX();
        double begun = Double.NaN;
        double step = Math.max(0.5, around.getWidth() / 400);
        for (double x = around.getX(); x <= around.getMaxX() + step; x += step) {
            if (path.contains(x, y) && Double.isNaN(begun)) {
                begun = x;
            } else if (!path.contains(x, y) && !Double.isNaN(begun)) {
                if (x - begun > best) {
                    best = x - begun;
                    at = (x + begun) / 2;
                }
                begun = Double.NaN;
            }
        }
        return new Point2D.Double(at, y);
    }

    private void key(Graphics2D canvas, int top, int width) {
        int columns = narrow ? 1 : 2;
        int column = (width - 2 * MARGIN) / columns;
        for (int level = 0; level <= 5; level++) {
            double x = MARGIN + (level % columns) * column;
            double y = top + (level / columns) * KEY_ROW;
            Rectangle2D.Double swatch = new Rectangle2D.Double(x, y, 34, 16);
            if (level < 5) {
                hatch(canvas, swatch, level);
                pen(canvas, inks.lettering());
            } else {
                pen(canvas, inks.lettering());
                canvas.setStroke(new BasicStroke(4));
            }
            canvas.draw(swatch);
            if (level == 5) {
                canvas.setPaint(inks.series(1));
                canvas.fill(
                        AffineTransform.getTranslateInstance(x + 17, y + 8).createTransformedShape(Plots.diamond()));
                canvas.setPaint(inks.ink());
            }
            String words = level == 0
                    ? "less than " + shading.from(1).substring("from ".length())
                    : level == 5 ? "detected there" : shading.from(level);
            canvas.drawString(words, (float) x + 44, (float) y + 13);
        }
    }
}
