package org.dentary.prevalence.truth;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.dentary.prevalence.chart.ChartFrame;
import org.dentary.prevalence.chart.ChartInks;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.Axis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;

/**
 * Rows one below the other, in each a circle for the apparent and a diamond for the true prevalence, with the interval as a
 * line through it. Who is not sampled has a row and no mark; an estimate without limits has a mark alone.
 */
final class TruthDrawing {
    private static final int WIDE = 720;
    private static final int NARROW = 360;
    private static final int ROW = 34;
    private static final int AROUND = 120;
    private static final double SHIFT = 0.18;

    private final JFreeChart chart;
    private final int width;
    private final int height;

    TruthDrawing(TruthTable table, ChartInks inks, boolean narrow) {
        int all = table.rows().size();
        List<TruthTable.Row> rows = table.rows().subList(0, ChartFrame.rows(all, ROW));
        this.width = narrow ? NARROW : WIDE;
        this.height = AROUND + ROW * Math.max(1, rows.size());
        this.chart = chart(table, rows, inks);
        ChartFrame.tellLeftOut(chart, rows.size(), all, inks);
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    /** Draws it with its top left corner at the canvas's origin. */
    void draw(Graphics2D canvas) {
        chart.draw(canvas, new Rectangle2D.Double(0, 0, width, height));
    }

    private static YIntervalSeriesCollection data(List<TruthTable.Row> rows) {
        YIntervalSeries apparent = new YIntervalSeries("Apparent");
        YIntervalSeries truth = new YIntervalSeries("True, by the set");
        for (int i = 0; i < rows.size(); i++) {
            TruthCell cell = rows.get(i).cell();
            if (!cell.isNotSampled()) {
                apparent.add(i - SHIFT, cell.prevalence(), cell.lower(), cell.upper());
                double at = cell.truePrevalence();
                truth.add(
                        i + SHIFT,
                        at,
                        cell.trueLower() == null ? at : cell.trueLower(),
                        cell.trueUpper() == null ? at : cell.trueUpper());
            }
        }
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        data.addSeries(apparent);
        data.addSeries(truth);
        return data;
    }

    private static JFreeChart chart(TruthTable table, List<TruthTable.Row> shown, ChartInks inks) {
        String[] names =
                shown.stream().map(row -> String.join(", ", row.groups())).toArray(String[]::new);
        SymbolAxis rows = new SymbolAxis(null, names);
        rows.setRange(-0.5, Math.max(1, names.length) - 0.5);
        rows.setGridBandsVisible(false);
        rows.setInverted(true);
        NumberAxis shares =
                new NumberAxis("Prevalence, " + TruthWords.level(table.report().confidence()) + " interval");
        shares.setNumberFormatOverride(new DecimalFormat("0.#%", DecimalFormatSymbols.getInstance(Locale.US)));
        shares.setRange(0, top(table.report().cells()));
        for (Axis axis : List.of(rows, shares)) {
            ChartFrame.ink(axis, inks);
        }
        XYPlot plot = ChartFrame.plot(data(shown), rows, shares, marks(inks), inks);
        plot.setOrientation(PlotOrientation.HORIZONTAL);
        JFreeChart chart = ChartFrame.chart(plot, true, inks);
        chart.setPadding(new RectangleInsets(0, 0, 0, 18));
        return chart;
    }

    private static XYErrorRenderer marks(ChartInks inks) {
        XYErrorRenderer marks = new XYErrorRenderer();
        marks.setDrawXError(false);
        marks.setCapLength(8);
        marks.setErrorStroke(new BasicStroke(2));
        marks.setSeriesPaint(0, inks.series(0));
        marks.setSeriesPaint(1, inks.series(1));
        marks.setSeriesShape(0, new Ellipse2D.Double(-5, -5, 10, 10));
        Path2D.Double diamond = new Path2D.Double();
        diamond.moveTo(0, -6.5);
        diamond.lineTo(6.5, 0);
        diamond.lineTo(0, 6.5);
        diamond.lineTo(-6.5, 0);
        diamond.closePath();
        marks.setSeriesShape(1, diamond);
        return marks;
    }

    private static double top(List<TruthCell> cells) {
        double highest = cells.stream()
                .flatMap(cell -> Stream.of(cell.upper(), cell.trueUpper(), cell.truePrevalence()))
                .filter(share -> share != null)
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0.1);
        return Math.min(1, Math.max(0.05, Math.ceil(highest * 1.05 * 20) / 20));
    }
}
