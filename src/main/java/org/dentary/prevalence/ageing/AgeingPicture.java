package org.dentary.prevalence.ageing;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.ageing.AgePattern.ClassFigures;
import org.dentary.prevalence.chart.ChartFrame;
import org.dentary.prevalence.chart.ChartInks;
import org.dentary.prevalence.chart.ChartPng;
import org.dentary.prevalence.chart.ChartSvg;
import org.dentary.prevalence.chart.PrevalenceChart.Use;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * Prevalence by sex and age class in pairs: a filled circle as read, a hollow diamond for the what-if, a line between them. No
 * interval is drawn, as none is claimed. Told by shape, not by color.
 */
public record AgeingPicture(AgeingWhatIf answer, boolean narrow) {
    private static final int WIDE = 720;
    private static final int NARROW = 360;
    private static final int ROW = 34;
    private static final int AROUND = 110;

    /** One class of one sex. */
    private record Pair(String name, ClassFigures figures) {}

    /** The picture for a wide screen, a file or paper. */
    public static AgeingPicture wide(AgeingWhatIf answer) {
        return new AgeingPicture(answer, false);
    }

    static String svg(AgeingWhatIf answer, Use use) {
        AgeingPicture picture = new AgeingPicture(answer, use == Use.NARROW_PAGE);
        return ChartSvg.of(
                picture.width(),
                picture.height(),
                picture.draw(ChartInks.PLACEHOLDERS),
                answer.title(),
                picture.words(),
                use);
    }

    static byte[] png(AgeingWhatIf answer) {
        AgeingPicture picture = wide(answer);
        return ChartPng.of(
                picture.width(), picture.height(), picture.draw(ChartInks.PAPER), answer.title(), picture.words());
    }

    /** Its figures in words, for those who do not see it. */
    public String words() {
        return pairs().stream()
                .map(pair -> pair.name() + ": as read "
                        + (pair.figures().read().prevalence() == null
                                ? "not sampled"
                                : Words.percent(
                                        pair.figures().read().prevalence(),
                                        pair.figures().read().counted()))
                        + ", what-if " + AgeingWords.share(pair.figures().whatIf()))
                .collect(Collectors.joining("; "));
    }

    public int width() {
        return narrow ? NARROW : WIDE;
    }

    public int height() {
        return AROUND + ROW * Math.max(1, pairs().size());
    }

    /** Draws it with its top left corner at the canvas's origin. */
    public Consumer<Graphics2D> draw(ChartInks inks) {
        JFreeChart chart = chart(inks);
        return canvas -> chart.draw(canvas, new Rectangle2D.Double(0, 0, width(), height()));
    }

    private List<Pair> pairs() {
        List<Pair> pairs = new ArrayList<>();
        answer.patterns().stream()
                .filter(pattern -> !pattern.sex().equals("ALL") && pattern.sampled())
                .forEach(pattern -> pattern.classes()
                        .forEach(one -> pairs.add(new Pair(
                                Words.of(pattern.sex()) + ", "
                                        + Words.of(one.ageClass()).toLowerCase(Locale.ROOT),
                                one))));
        return pairs;
    }

    private JFreeChart chart(ChartInks inks) {
        List<Pair> pairs = pairs();
        XYSeries read = new XYSeries("As read");
        XYSeries whatIf = new XYSeries("What-if");
        double most = 0.02;
        XYLineAndShapeRenderer marks = marks(inks);
        for (int i = 0; i < pairs.size(); i++) {
            Double before = pairs.get(i).figures().read().prevalence();
            Double after = pairs.get(i).figures().whatIf().prevalence();
            if (before != null) {
                read.add(i, before);
                most = Math.max(most, before);
            }
            if (after != null) {
                whatIf.add(i, after);
                most = Math.max(most, after);
            }
            if (before != null && after != null) {
                marks.addAnnotation(new XYLineAnnotation(i, before, i, after, new BasicStroke(1.5f), inks.ink()));
            }
        }
        XYSeriesCollection data = new XYSeriesCollection();
        data.addSeries(read);
        data.addSeries(whatIf);
        XYPlot plot = ChartFrame.plot(data, names(pairs, inks), shares(Math.min(1, most * 1.15), inks), marks, inks);
        plot.setOrientation(PlotOrientation.HORIZONTAL);
        JFreeChart chart = ChartFrame.chart(plot, true, inks);
        chart.setPadding(new RectangleInsets(0, 0, 0, 18));
        return chart;
    }

    private static SymbolAxis names(List<Pair> pairs, ChartInks inks) {
        SymbolAxis axis = new SymbolAxis(null, pairs.stream().map(Pair::name).toArray(String[]::new));
        axis.setRange(-0.5, Math.max(1, pairs.size()) - 0.5);
        axis.setGridBandsVisible(false);
        axis.setInverted(true);
        ChartFrame.ink(axis, inks);
        return axis;
    }

    private static NumberAxis shares(double top, ChartInks inks) {
        NumberAxis axis = new NumberAxis("Detected of counted; no interval is claimed");
        axis.setNumberFormatOverride(new DecimalFormat("0.#%", DecimalFormatSymbols.getInstance(Locale.US)));
        axis.setRange(0, top);
        ChartFrame.ink(axis, inks);
        return axis;
    }

    private static XYLineAndShapeRenderer marks(ChartInks inks) {
        XYLineAndShapeRenderer marks = new XYLineAndShapeRenderer(false, true);
        Shape[] shapes = {new Ellipse2D.Double(-5, -5, 10, 10), diamond()};
        for (int s = 0; s < shapes.length; s++) {
            marks.setSeriesShape(s, shapes[s]);
            marks.setSeriesPaint(s, inks.series(s));
            marks.setSeriesStroke(s, new BasicStroke(2));
            marks.setSeriesShapesFilled(s, s == 0);
        }
        return marks;
    }

    private static Shape diamond() {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(0, -7.5);
        path.lineTo(7.5, 0);
        path.lineTo(0, 7.5);
        path.lineTo(-7.5, 0);
        path.closePath();
        return path;
    }
}
