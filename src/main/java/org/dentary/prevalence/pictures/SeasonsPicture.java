package org.dentary.prevalence.pictures;

import java.awt.BasicStroke;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.prevalence.Names;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.chart.ChartFrame;
import org.dentary.prevalence.chart.ChartInks;
import org.dentary.prevalence.detection.ChanceService.SeasonCount;
import org.dentary.prevalence.detection.ChanceWords;
import org.dentary.prevalence.pictures.Picture.Column;
import org.dentary.prevalence.pictures.Picture.Named;
import org.dentary.prevalence.pictures.Picture.Plate;
import org.dentary.prevalence.question.ReportQuestion;
import org.dentary.statistics.Proportion;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;

/** Prevalence of each season with its interval, one below the other. */
final class SeasonsPicture {
    private SeasonsPicture() {}

    /** One season's figures; null shares where nobody was counted. */
    private record Season(Named season, SeasonCount count, Proportion share) {}

    static Picture of(ReportQuestion question, List<SeasonCount> counts, Names names) {
        List<Season> seasons = counts.stream()
                .map(c -> new Season(
                        new Named(c.season(), names.season(c.season())),
                        c,
                        Proportion.of(c.detected(), c.counted(), question.interval(), question.confidence())))
                .toList();
        String level = ChanceWords.share(question.confidence());
        return new Picture(
                "seasons",
                "Seasons side by side: prevalence of " + names.disease(question.disease()) + " among the deer tested",
                "The dot is detected of counted, the line through it its two-sided " + level
                        + " interval. Crude figures: where units, ages or sexes are not sampled alike from season to season,"
                        + " a difference here may be one of sampling.",
                seasons.stream()
                        .map(s -> s.season().name() + ": "
                                + (s.count().counted() == 0
                                        ? "not sampled"
                                        : s.count().detected() + " of "
                                                + s.count().counted() + ", "
                                                + Words.percent(
                                                        s.share().lower(),
                                                        s.count().counted()) + " to "
                                                + Words.percent(
                                                        s.share().upper(),
                                                        s.count().counted())))
                        .collect(Collectors.joining("; ")),
                List.of(
                        Column.text("season", "Season"),
                        Column.number("counted", "Counted"),
                        Column.number("detected", "Detected"),
                        Column.share("prevalence", "Prevalence"),
                        Column.share("lower", "From"),
                        Column.share("upper", "To")),
                seasons.stream().map(SeasonsPicture::row).toList(),
                (inks, narrow) -> draw(seasons, level, inks, narrow));
    }

    private static List<Object> row(Season season) {
        List<Object> row = new ArrayList<>();
        row.add(season.season());
        row.add(season.count().counted());
        row.add(season.count().detected());
        row.add(season.share().estimate());
        row.add(season.share().lower());
        row.add(season.share().upper());
        return row;
    }

    private static Plate draw(List<Season> seasons, String level, ChartInks inks, boolean narrow) {
        YIntervalSeries prevalence = new YIntervalSeries("Prevalence, " + level + " interval");
        double most = 0.02;
        for (int i = 0; i < seasons.size(); i++) {
            Proportion share = seasons.get(i).share();
            if (share.estimate() != null) {
                prevalence.add(i, share.estimate(), share.lower(), share.upper());
                most = Math.max(most, share.upper());
            }
        }
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        data.addSeries(prevalence);
        XYErrorRenderer marks = new XYErrorRenderer();
        marks.setDrawXError(false);
        marks.setCapLength(8);
        marks.setErrorStroke(new BasicStroke(2));
        marks.setSeriesPaint(0, inks.series(0));
        marks.setSeriesShape(0, Plots.circle());
        return Plots.rows(
                ChartFrame.plot(
                        data,
                        Plots.names(seasons.stream().map(s -> s.season().name()).toList(), inks),
                        Plots.numbers("Detected of counted", "0.#%", Math.min(1, most * 1.1), inks),
                        marks,
                        inks),
                seasons.size(),
                narrow,
                inks);
    }
}
