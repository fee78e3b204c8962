package org.dentary.prevalence.pictures;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.chart.ChartDrawing;
import org.dentary.prevalence.chart.PrevalenceChart;
import org.dentary.prevalence.detection.ChanceWords;
import org.dentary.prevalence.pictures.Picture.Column;
import org.dentary.prevalence.pictures.Picture.Plate;
import org.dentary.prevalence.table.PrevalenceTable;

/** Prevalence with its interval by age class and sex, as the report draws it. */
final class ClassesPicture {
    private ClassesPicture() {}

    /**
     * @param report by age class and sex
     * @param table the same in words
     * @param what disease and season, as people call them
     */
    static Picture of(PrevalenceReport report, PrevalenceTable table, PrevalenceChart chart, String what) {
        return new Picture(
                "classes",
                "Prevalence by age class and sex: " + what,
                "Each mark is detected of counted in one class, the line through it its two-sided "
                        + ChanceWords.share(report.confidence())
                        + " interval; the shape of the mark tells the sex. Where nobody was sampled there is no mark.",
                table.rows().stream()
                        .map(row -> String.join(", ", row.groups()) + ": " + row.share()
                                + (row.counted() == 0 ? "" : " of " + row.counted() + ", " + row.limits()))
                        .collect(Collectors.joining("; ")),
                List.of(
                        Column.text("ageClass", "Age class"),
                        Column.text("sex", "Sex"),
                        Column.number("counted", "Counted"),
                        Column.number("detected", "Detected"),
                        Column.share("prevalence", "Prevalence"),
                        Column.share("lower", "From"),
                        Column.share("upper", "To"),
                        Column.number("pending", "Pending")),
                rows(report, table),
                (inks, narrow) -> {
                    ChartDrawing drawing = chart.drawn(report, inks, narrow);
                    return new Plate(drawing.width(), drawing.height(), drawing::draw);
                });
    }

    private static List<List<Object>> rows(PrevalenceReport report, PrevalenceTable table) {
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < report.cells().size(); i++) {
            PrevalenceCell cell = report.cells().get(i);
            List<Object> row = new ArrayList<>(table.rows().get(i).groups());
            row.add(cell.counted());
            row.add(cell.detected());
            row.add(cell.prevalence());
            row.add(cell.lower());
            row.add(cell.upper());
            row.add(cell.pending());
            rows.add(row);
        }
        return rows;
    }
}
