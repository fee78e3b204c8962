package org.dentary.prevalence;

import jakarta.enterprise.context.ApplicationScoped;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;

/**
 * Prevalence with its intervals, one mark per cell: groups along the axis, the last dimension by shape of the mark (not by
 * color alone). One drawing serves page, file and document.
 */
@ApplicationScoped
public class PrevalenceChart {
    /** Where the drawing goes: into a page it takes the page's ink, as a file it is black on white. */
    public enum Use {
        PAGE,
        /** Into a page on a narrow screen: groups one below the other, so that the lettering keeps its size. */
        NARROW_PAGE,
        FILE
    }

    private static final int PNG_SCALE = 2;

    private final DimensionValues values;

    PrevalenceChart(DimensionValues values) {
        this.values = values;
    }

    /** The drawing as SVG text with a title and a description for those who do not see it. */
    String svg(PrevalenceReport report, Use use) {
        ChartDrawing drawing = drawing(report, ChartInks.PLACEHOLDERS, use == Use.NARROW_PAGE);
        return ChartSvg.of(drawing.width(), drawing.height(), drawing::draw, title(report), description(report), use);
    }

    /** The drawing as PNG, black on white, at twice its size. */
    byte[] png(PrevalenceReport report) {
        ChartDrawing drawing = onPaper(report);
        BufferedImage image = new BufferedImage(
                drawing.width() * PNG_SCALE, drawing.height() * PNG_SCALE, BufferedImage.TYPE_INT_RGB);
        Graphics2D canvas = image.createGraphics();
        canvas.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        canvas.setColor(Color.WHITE);
        canvas.fill(new Rectangle2D.Double(0, 0, image.getWidth(), image.getHeight()));
        canvas.scale(PNG_SCALE, PNG_SCALE);
        drawing.draw(canvas);
        canvas.dispose();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", out);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        return out.toByteArray();
    }

    /** The drawing in the inks of paper, for documents that draw it on their own canvas. */
    public ChartDrawing onPaper(PrevalenceReport report) {
        return drawing(report, ChartInks.PAPER, false);
    }

    private ChartDrawing drawing(PrevalenceReport report, ChartInks inks, boolean narrow) {
        return new ChartDrawing(report, PrevalenceTable.of(report, values), inks, narrow);
    }

    private static String title(PrevalenceReport report) {
        return report.disease() + " in season " + report.season() + ": prevalence by "
                + String.join(" and ", report.by());
    }

    private String description(PrevalenceReport report) {
        PrevalenceTable table = PrevalenceTable.of(report, values);
        return table.rows().stream()
                .map(row -> String.join(", ", row.groups()) + ": " + row.share()
                        + (row.counted() == 0 ? "" : " of " + row.counted()))
                .collect(Collectors.joining("; "));
    }
}
