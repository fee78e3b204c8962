package org.dentary.prevalence.chart;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.table.PrevalenceTable;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;

/**
 * One report as a drawing of a fixed size. A few groups stand side by side; many, or any on a narrow screen, one below the
 * other, the share across. Marks of the last dimension differ by shape where there are shapes enough, intervals run through
 * them; who is not sampled has a place and no mark.
 */
public final class ChartDrawing {
    private static final int WIDE = 720;
    private static final int WIDE_HEIGHT = 380;
    private static final int NARROW = 360;
    private static final int SIDE_BY_SIDE = 6;
    private static final int ROW = 26;
    private static final int AROUND = 120;
    private static final double SPREAD = 0.6;
    private static final List<Shape> SHAPES = shapes();

    private final JFreeChart chart;
    private final int width;
    private final int height;

    ChartDrawing(PrevalenceReport report, PrevalenceTable table, ChartInks inks, boolean narrow) {
        Map<String, String> groupNames = new LinkedHashMap<>();
        Map<String, String> seriesNames = new LinkedHashMap<>();
        Map<String, Map<String, PrevalenceCell>> cells = cells(report, table, groupNames, seriesNames);
        int series = seriesNames.size();
        int row = Math.max(ROW, 15 * series);
        int shown = ChartFrame.rows(groupNames.size(), row);
        List<String> groups = groupNames.values().stream().limit(shown).toList();
        boolean below = narrow || shown > SIDE_BY_SIDE;
        this.width = narrow ? NARROW : WIDE;
        this.height = below ? AROUND + shown * row : WIDE_HEIGHT;
        this.chart = chart(report, data(cells, seriesNames, shown), groups, inks, below, series);
        ChartFrame.tellLeftOut(chart, shown, groupNames.size(), inks);
    }

    /** Pixels across. */
    public int width() {
        return width;
    }

    /** Pixels down. */
    public int height() {
        return height;
    }

    /** Draws it with its top left corner at the canvas's origin. */
    public void draw(Graphics2D canvas) {
        chart.draw(canvas, new Rectangle2D.Double(0, 0, width, height));
    }

    /**
     * Group to mark to cell: the last dimension tells the mark, the others together the group; all of them together where
     * the last has more values than there are shapes. Each by its codes, as two places may be called alike.
     *
     * @param groupNames gets what groups are called
     * @param seriesNames gets what marks are called
     */
    private static Map<String, Map<String, PrevalenceCell>> cells(
            PrevalenceReport report,
            PrevalenceTable table,
            Map<String, String> groupNames,
            Map<String, String> seriesNames) {
        Map<String, Map<String, PrevalenceCell>> cells = new LinkedHashMap<>();
        boolean shapesTell = shapesTell(report);
        for (int i = 0; i < report.cells().size(); i++) {
            PrevalenceCell cell = report.cells().get(i);
            List<String> codes = List.copyOf(cell.group().values());
            List<String> words = table.rows().get(i).groups();
            int last = shapesTell ? codes.size() - 1 : codes.size();
            String group = String.join(", ", codes.subList(0, last));
            String mark = shapesTell ? codes.get(last) : "ALL";
            groupNames.putIfAbsent(group, String.join(", ", words.subList(0, last)));
            seriesNames.putIfAbsent(mark, shapesTell ? words.get(last) : "All");
            cells.computeIfAbsent(group, any -> new LinkedHashMap<>()).put(mark, cell);
        }
        return cells;
    }

    /** Whether shapes can tell the last of several dimensions. */
    private static boolean shapesTell(PrevalenceReport report) {
        return report.cells().stream().allMatch(cell -> cell.group().size() > 1)
                && report.cells().stream()
                                .map(cell -> List.copyOf(cell.group().values())
                                        .get(cell.group().size() - 1))
                                .distinct()
                                .count()
                        <= SHAPES.size();
    }

    private static YIntervalSeriesCollection data(
            Map<String, Map<String, PrevalenceCell>> cells, Map<String, String> seriesNames, int shown) {
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        int series = seriesNames.size();
        int s = 0;
        for (Map.Entry<String, String> one : seriesNames.entrySet()) {
            YIntervalSeries marks = new YIntervalSeries(one.getValue());
            double shift = series == 1 ? 0 : (s - (series - 1) / 2.0) * SPREAD / series;
            int g = 0;
            for (Map<String, PrevalenceCell> group :
                    cells.values().stream().limit(shown).toList()) {
                PrevalenceCell cell = group.get(one.getKey());
                if (cell != null && !cell.isNotSampled()) {
                    marks.add(g + shift, cell.prevalence(), cell.lower(), cell.upper());
                }
                g++;
            }
            data.addSeries(marks);
            s++;
        }
        return data;
    }

    private static JFreeChart chart(
            PrevalenceReport report,
            YIntervalSeriesCollection data,
            List<String> groups,
            ChartInks inks,
            boolean below,
            int series) {
        SymbolAxis groupAxis = new SymbolAxis(null, groups.toArray(String[]::new));
        groupAxis.setRange(-0.5, Math.max(1, groups.size()) - 0.5);
        groupAxis.setGridBandsVisible(false);
        groupAxis.setInverted(below);
        NumberAxis shareAxis = new NumberAxis("Detected of counted, " + level(report) + " % interval");
        shareAxis.setNumberFormatOverride(new DecimalFormat("0.#%", DecimalFormatSymbols.getInstance(Locale.US)));
        shareAxis.setRange(0, top(report));
        for (var axis : List.of(groupAxis, shareAxis)) {
            ChartFrame.ink(axis, inks);
        }
        XYPlot plot = ChartFrame.plot(data, groupAxis, shareAxis, marks(inks, series), inks);
        plot.setOrientation(below ? PlotOrientation.HORIZONTAL : PlotOrientation.VERTICAL);
        JFreeChart chart = ChartFrame.chart(plot, series > 1, inks);
        chart.setPadding(new RectangleInsets(0, 0, 0, 18));
        return chart;
    }

    private static XYErrorRenderer marks(ChartInks inks, int series) {
        XYErrorRenderer marks = new XYErrorRenderer();
        marks.setDrawXError(false);
        marks.setCapLength(8);
        marks.setErrorStroke(new BasicStroke(2));
        for (int s = 0; s < series; s++) {
            marks.setSeriesPaint(s, inks.series(s));
            marks.setSeriesShape(s, SHAPES.get(s));
        }
        return marks;
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
        return String.format(Locale.ROOT, "%.4f", 100 * report.confidence()).replaceFirst("\\.?0+$", "");
    }

    private static List<Shape> shapes() {
        List<Shape> shapes = new ArrayList<>();
        shapes.add(new Ellipse2D.Double(-5, -5, 10, 10));
        shapes.add(polygon(0, -6.5, 6.5, 0, 0, 6.5, -6.5, 0));
        shapes.add(new Rectangle2D.Double(-4.5, -4.5, 9, 9));
        shapes.add(polygon(0, -6, 6, 5, -6, 5));
        shapes.add(polygon(0, 6, 6, -5, -6, -5));
        shapes.add(polygon(-6, -2, -2, -2, -2, -6, 2, -6, 2, -2, 6, -2, 6, 2, 2, 2, 2, 6, -2, 6, -2, 2, -6, 2));
        return shapes;
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
