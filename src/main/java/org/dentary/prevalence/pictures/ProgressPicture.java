package org.dentary.prevalence.pictures;

import java.awt.BasicStroke;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.prevalence.chart.ChartFrame;
import org.dentary.prevalence.chart.ChartInks;
import org.dentary.prevalence.detection.ChanceOfDetection;
import org.dentary.prevalence.detection.UnitChance;
import org.dentary.prevalence.pictures.Picture.Column;
import org.dentary.prevalence.pictures.Picture.Plate;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;

/** How far each unit has come: tested, tested and pending, and the number that reaches the target. */
final class ProgressPicture {
    private ProgressPicture() {}

    /** @param what disease and season, as people call them */
    static Picture of(ChanceOfDetection report, String what) {
        List<UnitChance> units = report.units();
        return new Picture(
                "progress",
                "Progress to target by unit: " + what,
                "The bar runs from none to the number tested, with a dot at its end; the square is where it will be when all"
                        + " pending results are in; the upright line is the number that reaches the plan's target, all animals"
                        + " counting alike.",
                units.stream()
                        .map(u -> u.name() + ": " + u.tested() + " tested, " + u.pending() + " pending, target "
                                + (u.target() == null ? "not attainable" : u.target()) + ", "
                                + u.state().words())
                        .collect(Collectors.joining("; ")),
                List.of(
                        Column.text("unit", "Unit"),
                        Column.number("tested", "Tested"),
                        Column.number("pending", "Pending"),
                        Column.number("target", "Target"),
                        Column.share("probability", "Chance of detection"),
                        Column.text("state", "Stands")),
                units.stream().map(ProgressPicture::row).toList(),
                (inks, narrow) -> draw(units, inks, narrow));
    }

    private static List<Object> row(UnitChance unit) {
        List<Object> row = new ArrayList<>();
        row.add(unit.name());
        row.add(unit.tested());
        row.add(unit.pending());
        row.add(unit.target());
        row.add(unit.judged());
        row.add(unit.state().words());
        return row;
    }

    private static Plate draw(List<UnitChance> units, ChartInks inks, boolean narrow) {
        YIntervalSeries tested = new YIntervalSeries("Tested");
        YIntervalSeries pending = new YIntervalSeries("With pending");
        YIntervalSeries target = new YIntervalSeries("Target");
        double most = 1;
        for (int i = 0; i < units.size(); i++) {
            UnitChance unit = units.get(i);
            int both = unit.tested() + unit.pending();
            tested.add(i, unit.tested(), 0, unit.tested());
            if (unit.pending() > 0) {
                pending.add(i, both, both, both);
            }
            if (unit.target() != null) {
                target.add(i, unit.target(), unit.target(), unit.target());
                most = Math.max(most, unit.target());
            }
            most = Math.max(most, both);
        }
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        data.addSeries(target);
        data.addSeries(tested);
        data.addSeries(pending);
        XYErrorRenderer marks = new XYErrorRenderer();
        marks.setDrawXError(false);
        marks.setCapLength(0);
        marks.setErrorStroke(new BasicStroke(7, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
        marks.setSeriesPaint(0, inks.series(1));
        marks.setSeriesShape(0, Plots.gate());
        marks.setSeriesPaint(1, inks.series(0));
        marks.setSeriesShape(1, Plots.circle());
        marks.setSeriesPaint(2, inks.series(2));
        marks.setSeriesShape(2, Plots.square());
        return Plots.rows(
                ChartFrame.plot(
                        data,
                        Plots.names(units.stream().map(UnitChance::name).toList(), inks),
                        Plots.numbers("Animals", "#,##0", most * 1.05, inks),
                        marks,
                        inks),
                units.size(),
                narrow,
                inks);
    }
}
