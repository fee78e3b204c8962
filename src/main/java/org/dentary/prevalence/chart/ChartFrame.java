package org.dentary.prevalence.chart;

import java.awt.BasicStroke;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.Axis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYItemRenderer;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.data.xy.XYDataset;

/** What stands around the marks of every picture: axes, faint lines across and the legend above, all in the picture's inks. */
public final class ChartFrame {
    private static final int TALLEST = 8_000;

    private ChartFrame() {}

    /** Letters and draws an axis in these inks. */
    public static void ink(Axis axis, ChartInks inks) {
        axis.setLabelFont(inks.lettering());
        axis.setTickLabelFont(inks.lettering());
        axis.setLabelPaint(inks.ink());
        axis.setTickLabelPaint(inks.ink());
        axis.setAxisLinePaint(inks.ink());
        axis.setTickMarkPaint(inks.ink());
    }

    /** Marks over their axes, without ground or outline, a faint line at each tick of the second axis. */
    public static XYPlot plot(XYDataset data, ValueAxis across, ValueAxis up, XYItemRenderer marks, ChartInks inks) {
        XYPlot plot = new XYPlot(data, across, up, marks);
        plot.setBackgroundPaint(null);
        plot.setOutlineVisible(false);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinePaint(inks.faint());
        plot.setRangeGridlineStroke(new BasicStroke(1));
        return plot;
    }

    /** How many rows of a height a picture takes: more nobody reads, and as pixels they would fill the memory. */
    public static int rows(int all, int height) {
        return Math.min(all, TALLEST / height);
    }

    /** Says below the picture that it leaves out the last rows, where it does. */
    public static void tellLeftOut(JFreeChart chart, int shown, int all, ChartInks inks) {
        if (shown < all) {
            TextTitle told = new TextTitle(
                    String.format(Locale.US, "The first %,d of %,d rows; all are in the table.", shown, all),
                    inks.lettering());
            told.setPaint(inks.ink());
            told.setPosition(RectangleEdge.BOTTOM);
            chart.addSubtitle(told);
        }
    }

    /** The plot as a chart without a ground, with a legend above it where its series must be told apart. */
    public static JFreeChart chart(XYPlot plot, boolean legend, ChartInks inks) {
        JFreeChart chart = new JFreeChart(null, null, plot, legend);
        chart.setBackgroundPaint(null);
        if (legend) {
            chart.getLegend().setPosition(RectangleEdge.TOP);
            chart.getLegend().setItemFont(inks.lettering());
            chart.getLegend().setItemPaint(inks.ink());
            chart.getLegend().setBackgroundPaint(null);
            chart.getLegend().setFrame(BlockBorder.NONE);
        }
        return chart;
    }
}
