package org.dentary.prevalence.chart;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Locale;
import java.util.stream.Collectors;
import org.dentary.prevalence.Names;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.table.DimensionValues;
import org.dentary.prevalence.table.PrevalenceTable;

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

    private final DimensionValues values;
    private final Names names;

    PrevalenceChart(DimensionValues values, Names names) {
        this.values = values;
        this.names = names;
    }

    /** The drawing as SVG text with a title and a description for those who do not see it. */
    public String svg(PrevalenceReport report, Use use) {
        ChartDrawing drawing = drawn(report, ChartInks.PLACEHOLDERS, use == Use.NARROW_PAGE);
        return ChartSvg.of(drawing.width(), drawing.height(), drawing::draw, title(report), description(report), use);
    }

    /** The drawing as PNG, black on white, at twice its size. */
    public byte[] png(PrevalenceReport report) {
        ChartDrawing drawing = onPaper(report);
        return ChartPng.of(drawing.width(), drawing.height(), drawing::draw, title(report), description(report));
    }

    /** The drawing in the inks of paper, for documents that draw it on their own canvas. */
    public ChartDrawing onPaper(PrevalenceReport report) {
        return drawn(report, ChartInks.PAPER, false);
    }

    /** The drawing in any inks, for a wide or a narrow screen. */
    public ChartDrawing drawn(PrevalenceReport report, ChartInks inks, boolean narrow) {
        return new ChartDrawing(report, PrevalenceTable.of(report, values), inks, narrow);
    }

    private String title(PrevalenceReport report) {
        return names.of(report.disease(), report.season()) + ": prevalence by "
                + String.join(" and ", PrevalenceTable.of(report, values).heads())
                        .toLowerCase(Locale.US);
    }

    private String description(PrevalenceReport report) {
        PrevalenceTable table = PrevalenceTable.of(report, values);
        return table.rows().stream()
                .map(row -> String.join(", ", row.groups()) + ": " + row.share()
                        + (row.counted() == 0 ? "" : " of " + row.counted()))
                .collect(Collectors.joining("; "));
    }
}
