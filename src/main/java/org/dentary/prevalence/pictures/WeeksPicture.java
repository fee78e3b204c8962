package org.dentary.prevalence.pictures;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.text.DateFormat;
import java.text.SimpleDateFormat;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.chart.ChartFrame;
import org.dentary.prevalence.chart.ChartInks;
import org.dentary.prevalence.pictures.Picture.Column;
import org.dentary.prevalence.pictures.Picture.Plate;
import org.dentary.prevalence.pictures.PictureQueries.Week;
import org.jfree.chart.axis.DateAxis;
import org.jfree.chart.axis.DateTickUnit;
import org.jfree.chart.axis.DateTickUnitType;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** How many animals were taken, tested and reported week by week. */
final class WeeksPicture {
    private static final int MOST_WEEKS = 160;
    private static final TimeZone UTC = TimeZone.getTimeZone(ZoneOffset.UTC);

    private WeeksPicture() {}

    /** @param what disease and season, as people call them */
    static Picture of(String what, List<Week> counted) {
        List<Week> weeks = whole(counted);
        return new Picture(
                "weeks",
                "Week by week: " + what,
                "Animals with tissue, of every source and basis, by the week of death (dots), of first test (squares) and of last report (triangles), weeks"
                        + " from Monday. Tested and reported count once the animal's outcome is released, in the week in which it"
                        + " happened, so the last weeks still rise.",
                counted.isEmpty()
                        ? "Nothing yet."
                        : counted.stream()
                                .map(w -> "week of " + Words.day(w.week()) + ": " + w.taken() + " taken, " + w.tested()
                                        + " tested, " + w.reported() + " reported")
                                .collect(Collectors.joining("; ")),
                List.of(
                        Column.text("week", "Week from"),
                        Column.number("taken", "Taken"),
                        Column.number("tested", "Tested"),
                        Column.number("reported", "Reported")),
                weeks.stream()
                        .map(w -> List.<Object>of(w.week(), w.taken(), w.tested(), w.reported()))
                        .toList(),
                (inks, narrow) -> draw(weeks, inks, narrow));
    }

    /**
     * Every week from the first to the last, those in which nothing happened too. Where a mistyped year makes them more than a
     * season can have, only those in which something did.
     */
    static List<Week> whole(List<Week> counted) {
        if (counted.isEmpty()
                || ChronoUnit.WEEKS.between(
                                counted.get(0).week(),
                                counted.get(counted.size() - 1).week())
                        > MOST_WEEKS) {
            return counted;
        }
        Map<LocalDate, Week> byWeek = counted.stream().collect(Collectors.toMap(Week::week, Function.identity()));
        List<Week> whole = new ArrayList<>();
        LocalDate last = counted.get(counted.size() - 1).week();
        for (LocalDate week = counted.get(0).week(); !week.isAfter(last); week = week.plusWeeks(1)) {
            whole.add(byWeek.getOrDefault(week, new Week(week, 0, 0, 0)));
        }
        return whole;
    }

    private static Plate draw(List<Week> weeks, ChartInks inks, boolean narrow) {
        XYSeriesCollection data = new XYSeriesCollection();
        data.addSeries(series("Taken", weeks, Week::taken));
        data.addSeries(series("Tested", weeks, Week::tested));
        data.addSeries(series("Reported", weeks, Week::reported));
        int most = weeks.stream()
                .mapToInt(w -> Math.max(w.taken(), Math.max(w.tested(), w.reported())))
                .max()
                .orElse(1);
        DateAxis across = new Mondays();
        DateFormat days = new SimpleDateFormat("MMM d", Locale.US);
        days.setTimeZone(UTC);
        across.setDateFormatOverride(days);
        if (!weeks.isEmpty()) {
            across.setRange(
                    day(weeks.get(0).week().minusDays(4)),
                    day(weeks.get(weeks.size() - 1).week().plusDays(4)));
        }
        ChartFrame.ink(across, inks);
        XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer();
        style(lines, 0, inks.series(0), Plots.circle(), new BasicStroke(2));
        style(lines, 1, inks.series(1), Plots.square(), dashed(8));
        style(lines, 2, inks.series(2), Plots.triangle(), dashed(3));
        return Plots.plate(
                ChartFrame.plot(data, across, Plots.numbers("Animals", "#,##0", most * 1.1, inks), lines, inks),
                narrow ? Plots.NARROW : Plots.WIDE,
                narrow ? 300 : 340,
                inks);
    }

    private static Date day(LocalDate day) {
        return Date.from(day.atStartOfDay(ZoneOffset.UTC).toInstant());
    }

    /** Ticks of whole weeks where the marks are, not where the month's seventh days are. */
    @SuppressWarnings("serial")
    private static final class Mondays extends DateAxis {
        Mondays() {
            super(null, UTC, Locale.US);
        }

        @Override
        protected Date previousStandardDate(Date date, DateTickUnit unit) {
            return unit.getUnitType() == DateTickUnitType.DAY && unit.getMultiple() == 7
                    ? day(LocalDate.ofInstant(date.toInstant(), ZoneOffset.UTC)
                            .with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY)))
                    : super.previousStandardDate(date, unit);
        }
    }

    private static XYSeries series(String name, List<Week> weeks, Function<Week, Integer> count) {
        XYSeries series = new XYSeries(name);
        weeks.forEach(w -> series.add(day(w.week()).getTime(), count.apply(w)));
        return series;
    }

    private static void style(XYLineAndShapeRenderer lines, int series, Color ink, Shape mark, BasicStroke stroke) {
        lines.setSeriesPaint(series, ink);
        lines.setSeriesShape(series, mark);
        lines.setSeriesStroke(series, stroke);
    }

    private static BasicStroke dashed(float dash) {
        return new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {dash, 4}, 0);
    }
}
