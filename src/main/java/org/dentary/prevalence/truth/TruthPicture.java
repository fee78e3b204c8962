package org.dentary.prevalence.truth;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Locale;
import java.util.stream.Collectors;
import org.dentary.prevalence.Names;
import org.dentary.prevalence.chart.ChartInks;
import org.dentary.prevalence.chart.ChartPng;
import org.dentary.prevalence.chart.ChartSvg;
import org.dentary.prevalence.chart.PrevalenceChart.Use;
import org.dentary.prevalence.table.DimensionValues;

/** Apparent and true prevalence side by side; one drawing for page and file. */
@ApplicationScoped
class TruthPicture {
    private final DimensionValues values;
    private final Names names;

    TruthPicture(DimensionValues values, Names names) {
        this.values = values;
        this.names = names;
    }

    /** The drawing as SVG text with a title and a description for those who do not see it. */
    String svg(TruthReport report, Use use) {
        TruthTable table = TruthTable.of(report, values);
        TruthDrawing drawing = new TruthDrawing(table, ChartInks.PLACEHOLDERS, use == Use.NARROW_PAGE);
        return ChartSvg.of(drawing.width(), drawing.height(), drawing::draw, title(table), description(table), use);
    }

    /** The drawing as PNG, black on white, at twice its size. */
    byte[] png(TruthReport report) {
        TruthTable table = TruthTable.of(report, values);
        TruthDrawing drawing = new TruthDrawing(table, ChartInks.PAPER, false);
        return ChartPng.of(drawing.width(), drawing.height(), drawing::draw, title(table), description(table));
    }

    private String title(TruthTable table) {
        TruthReport report = table.report();
        return names.of(report.disease(), report.season()) + ": apparent and true prevalence by "
                + String.join(" and ", table.heads()).toLowerCase(Locale.US) + ", set "
                + report.performance().code();
    }

    private static String description(TruthTable table) {
        return table.rows().stream()
                .map(row -> String.join(", ", row.groups()) + ": " + row.sentence())
                .collect(Collectors.joining(" "));
    }
}
