package org.dentary.jaw.drawing;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/**
 * Draws lines of one color: thin, plain or bold, stripes for dentine, dots for what is hidden, and numerals made of strokes, so
 * that no font is needed and nothing depends on color.
 */
final class Pen {

    private static final double[][][] NUMERALS = {
        {{0.2, 0.25}, {0.5, 0}, {0.5, 1}},
        {{0.05, 0.25}, {0.2, 0.02}, {0.75, 0.02}, {0.9, 0.3}, {0.05, 1}, {0.95, 1}},
        {{0.05, 0.05}, {0.85, 0.05}, {0.4, 0.42}, {0.8, 0.5}, {0.9, 0.75}, {0.7, 1}, {0.2, 1}, {0.05, 0.85}},
        {{0.75, 1}, {0.75, 0}, {0.05, 0.7}, {1, 0.7}},
        {{0.85, 0}, {0.2, 0}, {0.12, 0.45}, {0.6, 0.4}, {0.9, 0.65}, {0.75, 1}, {0.2, 1}, {0.05, 0.9}},
        {{0.75, 0}, {0.3, 0.3}, {0.08, 0.7}, {0.3, 1}, {0.7, 1}, {0.9, 0.75}, {0.7, 0.5}, {0.25, 0.52}, {0.1, 0.7}}
    };

    private final Graphics2D graphics;

    Pen(Graphics2D graphics) {
        this.graphics = graphics;
        graphics.setColor(Color.BLACK);
    }

    void thin(Shape shape) {
        line(shape, 1.6f);
    }

    void plain(Shape shape) {
        line(shape, 2.6f);
    }

    void bold(Shape shape) {
        line(shape, 4.6f);
    }

    /** Stripes within a shape: dentine. */
    void stripes(Shape shape) {
        Rectangle2D box = shape.getBounds2D();
        Area stripes = new Area();
        for (double x = box.getMinX() - box.getHeight(); x < box.getMaxX(); x += 6) {
            Path2D stripe = new Path2D.Double();
            stripe.moveTo(x, box.getMaxY());
            stripe.lineTo(x + box.getHeight(), box.getMinY());
            stripe.lineTo(x + box.getHeight() + 3.2, box.getMinY());
            stripe.lineTo(x + 3.2, box.getMaxY());
            stripe.closePath();
            stripes.add(new Area(stripe));
        }
        stripes.intersect(new Area(shape));
        graphics.fill(stripes);
        thin(shape);
    }

    /** A broken outline: what cannot be seen. */
    void broken(Shape shape) {
        graphics.setStroke(
                new BasicStroke(2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10f, new float[] {7, 6}, 0));
        graphics.draw(shape);
    }

    /** A numeral from 1 to 6, its top left corner and height given. */
    void numeral(int number, double x, double y, double height) {
        graphics.setStroke(new BasicStroke((float) (height / 8), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        graphics.draw(polyline(NUMERALS[number - 1], x, y, height * 0.6, height));
    }

    void questionMark(double x, double y, double height) {
        graphics.setStroke(new BasicStroke((float) (height / 8), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        double[][] hook = {{0.05, 0.25}, {0.25, 0.02}, {0.7, 0.02}, {0.95, 0.25}, {0.5, 0.55}, {0.5, 0.7}};
        graphics.draw(polyline(hook, x, y, height * 0.6, height));
        graphics.draw(polyline(new double[][] {{0.5, 0.96}, {0.5, 1}}, x, y, height * 0.6, height));
    }

    /** An arrow from one point to another. */
    void arrow(double fromX, double fromY, double toX, double toY) {
        Path2D arrow = new Path2D.Double();
        arrow.moveTo(fromX, fromY);
        arrow.lineTo(toX, toY);
        double angle = Math.atan2(toY - fromY, toX - fromX);
        for (double side : new double[] {-0.5, 0.5}) {
            arrow.moveTo(toX, toY);
            arrow.lineTo(toX - 12 * Math.cos(angle + side), toY - 12 * Math.sin(angle + side));
        }
        plain(arrow);
    }

    private void line(Shape shape, float weight) {
        graphics.setStroke(new BasicStroke(weight, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        graphics.draw(shape);
    }

    private static Shape polyline(double[][] points, double x, double y, double width, double height) {
        Path2D path = new Path2D.Double();
        path.moveTo(points[0][0], points[0][1]);
        for (int i = 1; i < points.length; i++) {
            path.lineTo(points[i][0], points[i][1]);
        }
        AffineTransform place = new AffineTransform(width, 0, 0, height, x, y);
        return place.createTransformedShape(path);
    }
}
