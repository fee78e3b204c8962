package org.dentary.calculators;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.NumberFormat;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.stream.Stream;
import org.dentary.calculators.Drawing.Curve;
import org.dentary.calculators.Drawing.Curves;
import org.dentary.calculators.Drawing.Interval;
import org.dentary.calculators.Drawing.Intervals;
import org.dentary.calculators.Drawing.Mark;
import org.dentary.calculators.Drawing.Point;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.LogAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XIntervalSeries;
import org.jfree.data.xy.XIntervalSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.ViewBox;

/** Draws what a calculator answers as SVG: black and sloe on white, marks told apart by shape as well as color. */
final class CalculatorCharts {
    private static final int DESK = 760;
    private static final int PHONE = 400;
    private static final int LONG = 44;
    private static final int SHORT = 20;
    private static final int ROW = 34;
    private static final int AROUND = 90;
    private static final int CURVES_HEIGHT = 380;
    private static final Color INK = new Color(0x14201c);
    private static final Color FAINT = new Color(0xc6cfc9);
    private static final Color SLOE = new Color(0x4a2a63);
    private static final Color BRACKEN = new Color(0x8a5a00);
    private static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 13);

    private CalculatorCharts() {}

    /** The drawing as an SVG document that says in words what it shows; {@code narrow} to be read on a phone. */
    static String svg(Drawing drawing, boolean narrow) {
        if (drawing instanceof Intervals intervals) {
            int height = AROUND + ROW * intervals.intervals().size();
            return svg(chart(intervals, narrow ? SHORT : LONG), narrow, height, drawing.words());
        }
        return svg(chart((Curves) drawing), narrow, CURVES_HEIGHT, drawing.words());
    }

    private static String svg(JFreeChart chart, boolean narrow, int height, String words) {
        int width = narrow ? PHONE : DESK;
        SVGGraphics2D canvas = new SVGGraphics2D(width, height);
        chart.draw(canvas, new Rectangle2D.Double(0, 0, width, height));
        String svg = canvas.getSVGElement(null, true, new ViewBox(0, 0, width, height), null, null);
        String title = "<title>" + words.replace("&", "&amp;").replace("<", "&lt;") + "</title>";
        return svg.replaceFirst(">", " role='img'>" + Matcher.quoteReplacement(title));
    }

    private static JFreeChart chart(Intervals drawing, int label) {
        List<Interval> rows = drawing.intervals();
        double low = edge(rows, drawing.logarithmic(), false);
        double high = edge(rows, drawing.logarithmic(), true);
        XIntervalSeries main = new XIntervalSeries("Smoothed, with interval", false, true);
        XIntervalSeries beside = new XIntervalSeries("Raw", false, true);
        for (int i = 0; i < rows.size(); i++) {
            Interval row = rows.get(i);
            int y = rows.size() - 1 - i;
            if (row.estimate() != null || row.lower() != null) {
                double lower = within(row.lower() == null ? row.estimate() : row.lower(), low, high);
                double upper = within(row.upper() == null ? row.estimate() : row.upper(), low, high);
                double at = row.estimate() == null ? (lower + upper) / 2 : within(row.estimate(), low, high);
                main.add(at, lower, upper, y);
            }
            if (row.beside() != null) {
                double at = within(row.beside(), low, high);
                beside.add(at, at, at, y);
            }
        }
        XIntervalSeriesCollection data = new XIntervalSeriesCollection();
        data.addSeries(main);
        if (beside.getItemCount() > 0) {
            data.addSeries(beside);
        }
        XYErrorRenderer marks = marks();
        marks.setDrawXError(true);
        marks.setDrawYError(false);
        SymbolAxis names = new SymbolAxis(
                null,
                Stream.iterate(rows.size() - 1, i -> i - 1)
                        .limit(rows.size())
                        .map(i -> shortened(rows.get(i).label(), label))
                        .toArray(String[]::new));
        names.setGridBandsVisible(false);
        names.setRange(-0.6, rows.size() - 0.4);
        ValueAxis line = drawing.logarithmic() ? new LogAxis(drawing.axis()) : new NumberAxis(drawing.axis());
        line.setRange(low, high);
        if (line instanceof LogAxis log) {
            log.setNumberFormatOverride(new DecimalFormat("0.###", DecimalFormatSymbols.getInstance(Locale.US)));
        } else {
            ((NumberAxis) line).setNumberFormatOverride(drawing.axis().startsWith("Agreement") ? plain() : percent());
        }
        return chart(new XYPlot(data, line, names, marks), beside.getItemCount() > 0);
    }

    private static JFreeChart chart(Curves drawing) {
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        XYErrorRenderer marks = marks();
        marks.setDrawXError(false);
        marks.setDrawYError(true);
        double top = 0;
        for (int s = 0; s < drawing.curves().size(); s++) {
            Curve curve = drawing.curves().get(s);
            YIntervalSeries series = new YIntervalSeries(curve.label(), false, true);
            for (Point point : curve.points()) {
                double lower = point.lower() == null ? point.y() : point.lower();
                double upper = point.upper() == null ? point.y() : point.upper();
                series.add(point.x(), point.y(), lower, upper);
                top = Math.max(top, upper);
            }
            data.addSeries(series);
            marks.setSeriesLinesVisible(s, curve.line());
            marks.setSeriesShapesVisible(s, curve.dots());
        }
        NumberAxis across = new NumberAxis(drawing.across());
        across.setAutoRangeIncludesZero(false);
        across.setNumberFormatOverride(plain());
        if (drawing.across().equals("Period")) {
            across.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
        }
        NumberAxis up = new NumberAxis(drawing.up());
        up.setNumberFormatOverride(percent());
        up.setRange(0, top > 0.5 ? 1.02 : Math.max(0.01, top * 1.08));
        XYPlot plot = new XYPlot(data, across, up, marks);
        drawing.marks()
                .forEach(mark ->
                        plot.addDomainMarker(marker(mark, across.getRange().getCentralValue())));
        return chart(plot, drawing.curves().size() > 1);
    }

    private static ValueMarker marker(Mark mark, double middle) {
        ValueMarker marker = new ValueMarker(
                mark.x(),
                BRACKEN,
                new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {6, 4}, 0));
        marker.setLabel(" " + mark.label() + " ");
        marker.setLabelFont(TEXT);
        marker.setLabelPaint(INK);
        boolean right = mark.x() > middle;
        marker.setLabelAnchor(right ? RectangleAnchor.BOTTOM_LEFT : RectangleAnchor.BOTTOM_RIGHT);
        marker.setLabelTextAnchor(right ? TextAnchor.BOTTOM_RIGHT : TextAnchor.BOTTOM_LEFT);
        return marker;
    }

    private static XYErrorRenderer marks() {
        XYErrorRenderer marks = new XYErrorRenderer();
        marks.setCapLength(8);
        marks.setErrorStroke(new BasicStroke(2));
        Color[] paints = {SLOE, BRACKEN};
        Shape[] shapes = {new Ellipse2D.Double(-5, -5, 10, 10), diamond()};
        for (int s = 0; s < paints.length; s++) {
            marks.setSeriesPaint(s, paints[s]);
            marks.setSeriesStroke(s, new BasicStroke(2.5f));
            marks.setSeriesShape(s, shapes[s]);
        }
        return marks;
    }

    private static JFreeChart chart(XYPlot plot, boolean legend) {
        for (ValueAxis axis : List.of(plot.getDomainAxis(), plot.getRangeAxis())) {
            axis.setLabelFont(TEXT);
            axis.setTickLabelFont(TEXT);
            axis.setLabelPaint(INK);
            axis.setTickLabelPaint(INK);
            axis.setAxisLinePaint(INK);
            axis.setTickMarkPaint(INK);
        }
        plot.setBackgroundPaint(null);
        plot.setOutlineVisible(false);
        plot.setDomainGridlinePaint(FAINT);
        plot.setRangeGridlinePaint(FAINT);
        JFreeChart chart = new JFreeChart(null, null, plot, legend);
        chart.setBackgroundPaint(Color.WHITE);
        if (chart.getLegend() != null) {
            chart.getLegend().setPosition(RectangleEdge.TOP);
            chart.getLegend().setItemFont(TEXT);
            chart.getLegend().setItemPaint(INK);
            chart.getLegend().setBackgroundPaint(null);
            chart.getLegend().setFrame(BlockBorder.NONE);
        }
        return chart;
    }

    /** The end of the line: all finite values with some room, and what such a line must show (0, or 1 for a ratio). */
    private static double edge(List<Interval> rows, boolean logarithmic, boolean upper) {
        double[] values = rows.stream()
                .flatMap(row -> Stream.of(row.estimate(), row.lower(), row.upper(), row.beside()))
                .filter(value -> value != null && Double.isFinite(value) && (!logarithmic || value > 0))
                .mapToDouble(Double::doubleValue)
                .toArray();
        double least = logarithmic ? 1 : 0;
        double most = logarithmic ? 1 : 0.01;
        for (double value : values) {
            least = Math.min(least, value);
            most = Math.max(most, value);
        }
        if (logarithmic) {
            return upper ? Math.min(1e6, most * 2) : Math.max(1e-6, least / 2);
        }
        double room = 0.04 * (most - least);
        return upper ? most + room : least < 0 ? least - room : 0;
    }

    private static double within(double value, double low, double high) {
        return Math.max(low, Math.min(high, value));
    }

    private static String shortened(String label, int most) {
        return label.length() <= most ? label : label.substring(0, most - 1) + "\u2026";
    }

    private static NumberFormat percent() {
        return new DecimalFormat("0.##%", DecimalFormatSymbols.getInstance(Locale.US));
    }

    private static NumberFormat plain() {
        return new DecimalFormat("#,##0.##", DecimalFormatSymbols.getInstance(Locale.US));
    }

    private static Shape diamond() {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(0, -6.5);
        path.lineTo(6.5, 0);
        path.lineTo(0, 6.5);
        path.lineTo(-6.5, 0);
        path.closePath();
        return path;
    }
}
