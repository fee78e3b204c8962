package org.dentary.prevalence.pictures;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import org.dentary.prevalence.chart.ChartFrame;
import org.dentary.prevalence.chart.ChartInks;
import org.dentary.prevalence.pictures.Picture.Plate;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;

/** What all charts here have in common: inks, axes, sizes; marks that differ by shape and line, not by color alone. */
final class Plots {
    static final int WIDE = 720;
    static final int NARROW = 360;
    private static final int ROW = 34;
    private static final int AROUND = 110;

    private Plots() {}

    /** Names one below the other, each in a row of its own. */
    static SymbolAxis names(List<String> names, ChartInks inks) {
        SymbolAxis axis = new SymbolAxis(null, names.toArray(String[]::new));
        axis.setRange(-0.5, Math.max(1, names.size()) - 0.5);
        axis.setGridBandsVisible(false);
        axis.setInverted(true);
        ChartFrame.ink(axis, inks);
        return axis;
    }

    static NumberAxis numbers(String words, String pattern, double top, ChartInks inks) {
        NumberAxis axis = new NumberAxis(words);
        axis.setNumberFormatOverride(new DecimalFormat(pattern, DecimalFormatSymbols.getInstance(Locale.US)));
        if (!pattern.contains("%")) {
            axis.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
        }
        axis.setRange(0, top <= 0 ? 1 : top);
        ChartFrame.ink(axis, inks);
        return axis;
    }

    /** A plot of rows one below the other, as high as it has rows. */
    static Plate rows(XYPlot plot, int rows, boolean narrow, ChartInks inks) {
        plot.setOrientation(PlotOrientation.HORIZONTAL);
        return plate(plot, narrow ? NARROW : WIDE, AROUND + ROW * Math.max(1, rows), inks);
    }

    static Plate plate(XYPlot plot, int width, int height, ChartInks inks) {
        JFreeChart chart = ChartFrame.chart(plot, true, inks);
        return new Plate(width, height, canvas -> chart.draw(canvas, new Rectangle2D.Double(0, 0, width, height)));
    }

    static Shape circle() {
        return new Ellipse2D.Double(-5, -5, 10, 10);
    }

    static Shape square() {
        return new Rectangle2D.Double(-4.5, -4.5, 9, 9);
    }

    static Shape diamond() {
        return polygon(0, -6.5, 6.5, 0, 0, 6.5, -6.5, 0);
    }

    static Shape triangle() {
        return polygon(0, -6, 6, 5, -6, 5);
    }

    /** A line across its row, where something should be reached. */
    static Shape gate() {
        return new Rectangle2D.Double(-1.5, -12, 3, 24);
    }

    private static Shape polygon(double... points) {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(points[0], points[1]);
        for (int i = 2; i < points.length; i += 2) {
            path.lineTo(points[i], points[i + 1]);
        }
        path.closePath();
        return path;
    }
}
