package org.dentary.prevalence.pictures;

import java.awt.BasicStroke;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.prevalence.chart.ChartFrame;
import org.dentary.prevalence.chart.ChartInks;
import org.dentary.prevalence.pictures.Picture.Column;
import org.dentary.prevalence.pictures.Picture.Plate;
import org.dentary.prevalence.pictures.PictureQueries.Waited;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;

/** Days from receipt to the last report, by laboratory: the middle half and the slowest tenth beside what was promised. */
final class TurnaroundPicture {
    private TurnaroundPicture() {}

    /** One laboratory; days at which that share of its specimens was reported. */
    record Laboratory(
            String name, int specimens, int quarter, int median, int threeQuarters, int nineTenths, Integer promised) {
        static Laboratory of(String name, List<Waited> waited) {
            return new Laboratory(
                    name,
                    waited.stream().mapToInt(Waited::specimens).sum(),
                    at(waited, 0.25),
                    at(waited, 0.5),
                    at(waited, 0.75),
                    at(waited, 0.9),
                    waited.get(0).promised());
        }

        /** The fewest days within which at least the share was reported (quantile type 1 of Hyndman and Fan 1996). */
        static int at(List<Waited> waited, double share) {
            int all = waited.stream().mapToInt(Waited::specimens).sum();
            int reported = 0;
            for (Waited one : waited) {
                reported += one.specimens();
                if (reported >= share * all - 1e-9) {
                    return one.days();
                }
            }
            throw new IllegalStateException("nothing waited");
        }
    }

    /**
     * @param what disease and season, as people call them
     * @param waited by laboratory in set-up order, then by days
     */
    static Picture of(String what, List<Waited> waited) {
        Map<String, List<Waited>> byLaboratory = waited.stream()
                .collect(Collectors.groupingBy(Waited::laboratory, LinkedHashMap::new, Collectors.toList()));
        List<Laboratory> laboratories = byLaboratory.entrySet().stream()
                .map(e -> Laboratory.of(e.getKey(), e.getValue()))
                .toList();
        return new Picture(
                "turnaround",
                "Laboratory turnaround: " + what,
                "Days from receipt (dispatch where no receipt was told) to the last report of a specimen, outcomes released: the"
                        + " line is the middle half, the dot the median, the triangle the day by which nine in ten were reported,"
                        + " the upright line what the laboratory promises.",
                laboratories.isEmpty()
                        ? "Nothing reported yet."
                        : laboratories.stream()
                                .map(y -> y.name() + ": median " + y.median() + " days, middle half " + y.quarter()
                                        + " to " + y.threeQuarters() + ", nine in ten within " + y.nineTenths()
                                        + ", promised " + (y.promised() == null ? "nothing" : y.promised())
                                        + ", " + y.specimens() + " specimens")
                                .collect(Collectors.joining("; ")),
                List.of(
                        Column.text("laboratory", "Laboratory"),
                        Column.number("specimens", "Specimens"),
                        Column.number("quarterDays", "A quarter within, days"),
                        Column.number("medianDays", "Half within, days"),
                        Column.number("threeQuartersDays", "Three quarters within, days"),
                        Column.number("nineTenthsDays", "Nine in ten within, days"),
                        Column.number("promisedDays", "Promised, days")),
                laboratories.stream().map(TurnaroundPicture::row).toList(),
                (inks, narrow) -> draw(laboratories, inks, narrow));
    }

    private static List<Object> row(Laboratory laboratory) {
        List<Object> row = new ArrayList<>();
        row.add(laboratory.name());
        row.add(laboratory.specimens());
        row.add(laboratory.quarter());
        row.add(laboratory.median());
        row.add(laboratory.threeQuarters());
        row.add(laboratory.nineTenths());
        row.add(laboratory.promised());
        return row;
    }

    private static Plate draw(List<Laboratory> laboratories, ChartInks inks, boolean narrow) {
        YIntervalSeries promised = new YIntervalSeries("Promised");
        YIntervalSeries half = new YIntervalSeries("Median, middle half");
        YIntervalSeries slow = new YIntervalSeries("Nine in ten");
        int most = 1;
        for (int i = 0; i < laboratories.size(); i++) {
            Laboratory y = laboratories.get(i);
            half.add(i, y.median(), y.quarter(), y.threeQuarters());
            slow.add(i, y.nineTenths(), y.nineTenths(), y.nineTenths());
            most = Math.max(most, y.nineTenths());
            if (y.promised() != null) {
                promised.add(i, y.promised(), y.promised(), y.promised());
                most = Math.max(most, y.promised());
            }
        }
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        data.addSeries(promised);
        data.addSeries(half);
        data.addSeries(slow);
        XYErrorRenderer marks = new XYErrorRenderer();
        marks.setDrawXError(false);
        marks.setCapLength(8);
        marks.setErrorStroke(new BasicStroke(3));
        marks.setSeriesPaint(0, inks.series(1));
        marks.setSeriesShape(0, Plots.gate());
        marks.setSeriesPaint(1, inks.series(0));
        marks.setSeriesShape(1, Plots.circle());
        marks.setSeriesPaint(2, inks.series(2));
        marks.setSeriesShape(2, Plots.triangle());
        return Plots.rows(
                ChartFrame.plot(
                        data,
                        Plots.names(laboratories.stream().map(Laboratory::name).toList(), inks),
                        Plots.numbers("Days", "#,##0", most * 1.1, inks),
                        marks,
                        inks),
                laboratories.size(),
                narrow,
                inks);
    }
}
