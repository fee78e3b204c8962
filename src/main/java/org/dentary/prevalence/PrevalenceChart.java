package org.dentary.prevalence;

import jakarta.enterprise.context.ApplicationScoped;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import org.jfree.svg.SVGGraphics2D;

/**
 * Prevalence with its intervals, one mark per cell: groups of the first dimension along the axis, the second by shape of
 * the mark (not by color alone). One drawing serves page, file and document.
 */
@ApplicationScoped
class PrevalenceChart {
    /** Where the drawing goes: into a page it takes the page's ink, as a file it is black on white. */
    enum Use {
        PAGE,
        FILE
    }

    private static final int WIDTH = 720;
    private static final int HEIGHT = 380;
    private static final Color INK = new Color(17, 18, 19);
    private static final Color FAINT = new Color(17, 18, 20);
    private static final Color[] SERIES = {new Color(17, 18, 21), new Color(17, 18, 22), new Color(17, 18, 23)};
    private static final String[] SERIES_ON_PAGE = {"var(--series-1)", "var(--series-2)", "var(--series-3)"};
    private static final Pattern STYLE = Pattern.compile("style=([\"'])(.*?)\\1");
    private static final String[] SERIES_IN_FILE = {"#1f4e79", "#a14a12", "#555555"};

    /** The drawing as SVG text with a title and a description for those who do not see it. */
    String svg(PrevalenceReport report, Use use) {
        SVGGraphics2D canvas = new SVGGraphics2D(WIDTH, HEIGHT);
        chart(report).draw(canvas, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
        String svg = canvas.getSVGElement(null, true, new org.jfree.svg.ViewBox(0, 0, WIDTH, HEIGHT), null, null);
        String title = "<title>" + escape(title(report)) + "</title><desc>" + escape(description(report)) + "</desc>";
        svg = svg.replaceFirst(">", " role=\"img\">" + java.util.regex.Matcher.quoteReplacement(title));
        svg = ink(svg, INK, use == Use.PAGE ? "currentColor" : "#111111");
        svg = ink(svg, FAINT, use == Use.PAGE ? "var(--rule)" : "#c8c8c8");
        for (int i = 0; i < SERIES.length; i++) {
            svg = ink(svg, SERIES[i], use == Use.PAGE ? SERIES_ON_PAGE[i] : SERIES_IN_FILE[i]);
        }
        return use == Use.PAGE ? unstyled(svg) : svg;
    }

    /** Style attributes as presentation attributes: the pages' content security policy ignores the former. */
    private static String unstyled(String svg) {
        return STYLE.matcher(svg)
                .replaceAll(style -> java.util.regex.Matcher.quoteReplacement(
                        Stream.of(style.group(2).split(";"))
                                .map(declaration -> declaration.split(":", 2))
                                .filter(pair -> pair.length == 2)
                                .map(pair -> pair[0].strip() + "=" + style.group(1) + pair[1].strip() + style.group(1))
                                .collect(Collectors.joining(" "))));
    }

    private static String ink(String svg, Color sentinel, String color) {
        return svg.replace(
                "rgb(" + sentinel.getRed() + "," + sentinel.getGreen() + "," + sentinel.getBlue() + ")", color);
    }

    /** The chart itself, for documents that draw it on their own canvas. */
    JFreeChart chart(PrevalenceReport report) {
        String first = report.by().get(0);
        String second = report.by().size() > 1 ? report.by().get(1) : null;
        List<String> groups = values(report, first);
        List<String> series = second == null ? List.of("") : values(report, second);
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        for (int s = 0; s < series.size(); s++) {
            YIntervalSeries marks = new YIntervalSeries(series.get(s).isEmpty() ? "All" : words(series.get(s)));
            for (PrevalenceCell cell : report.cells()) {
                if (cell.isNotSampled()
                        || (second != null && !cell.group().get(second).equals(series.get(s)))) {
                    continue;
                }
                double shift = series.size() == 1 ? 0 : (s - (series.size() - 1) / 2.0) * 0.6 / series.size();
                marks.add(
                        groups.indexOf(cell.group().get(first)) + shift, cell.prevalence(), cell.lower(), cell.upper());
            }
            data.addSeries(marks);
        }
        SymbolAxis groupAxis =
                new SymbolAxis(null, groups.stream().map(PrevalenceChart::words).toArray(String[]::new));
        groupAxis.setRange(-0.5, groups.size() - 0.5);
        groupAxis.setGridBandsVisible(false);
        NumberAxis shareAxis = new NumberAxis("Detected of counted, with " + level(report) + " % interval");
        shareAxis.setNumberFormatOverride(new DecimalFormat("0.#%", DecimalFormatSymbols.getInstance(Locale.US)));
        shareAxis.setRange(0, top(report));
        Font text = new Font(Font.SANS_SERIF, Font.PLAIN, 13);
        for (var axis : List.of(groupAxis, shareAxis)) {
            axis.setLabelFont(text);
            axis.setTickLabelFont(text);
            axis.setLabelPaint(INK);
            axis.setTickLabelPaint(INK);
            axis.setAxisLinePaint(INK);
            axis.setTickMarkPaint(INK);
        }
        XYErrorRenderer marks = new XYErrorRenderer();
        marks.setDrawXError(false);
        marks.setCapLength(8);
        marks.setErrorStroke(new BasicStroke(2));
        Shape[] shapes = {circle(), diamond(), square()};
        for (int s = 0; s < series.size(); s++) {
            marks.setSeriesPaint(s, SERIES[s % SERIES.length]);
            marks.setSeriesShape(s, shapes[s % shapes.length]);
        }
        XYPlot plot = new XYPlot(data, groupAxis, shareAxis, marks);
        plot.setBackgroundPaint(null);
        plot.setOutlineVisible(false);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinePaint(FAINT);
        plot.setRangeGridlineStroke(new BasicStroke(1));
        JFreeChart chart = new JFreeChart(null, null, plot, series.size() > 1);
        chart.setBackgroundPaint(null);
        if (chart.getLegend() != null) {
            chart.getLegend().setPosition(RectangleEdge.TOP);
            chart.getLegend().setItemFont(text);
            chart.getLegend().setItemPaint(INK);
            chart.getLegend().setBackgroundPaint(null);
            chart.getLegend().setFrame(org.jfree.chart.block.BlockBorder.NONE);
        }
        return chart;
    }

    private static String title(PrevalenceReport report) {
        return report.disease() + " in season " + report.season() + ": prevalence by "
                + String.join(" and ", report.by());
    }

    private static String description(PrevalenceReport report) {
        return report.cells().stream()
                .map(cell -> cell.group().values().stream()
                                .map(PrevalenceChart::words)
                                .collect(Collectors.joining(", "))
                        + ": "
                        + (cell.isNotSampled()
                                ? "not sampled"
                                : Words.percent(cell.prevalence(), cell.counted()) + " of " + cell.counted()))
                .collect(Collectors.joining("; "));
    }

    private static double top(PrevalenceReport report) {
        double highest = report.cells().stream()
                .filter(cell -> cell.upper() != null)
                .mapToDouble(PrevalenceCell::upper)
                .max()
                .orElse(0.1);
        return Math.min(1, Math.ceil(highest * 1.05 * 20) / 20);
    }

    private static String level(PrevalenceReport report) {
        return String.format(Locale.ROOT, "%.1f", 100 * report.confidence()).replace(".0", "");
    }

    private static List<String> values(PrevalenceReport report, String field) {
        return report.cells().stream()
                .map(cell -> cell.group().get(field))
                .distinct()
                .toList();
    }

    private static String words(String code) {
        return Words.of(code);
    }

    private static String escape(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;");
    }

    private static Shape circle() {
        return new Ellipse2D.Double(-5, -5, 10, 10);
    }

    private static Shape square() {
        return new Rectangle2D.Double(-4.5, -4.5, 9, 9);
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
