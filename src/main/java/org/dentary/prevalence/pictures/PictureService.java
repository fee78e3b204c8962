package org.dentary.prevalence.pictures;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.plan.UnitBoundary;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.NotFound;
import org.dentary.prevalence.Names;
import org.dentary.prevalence.PrevalenceAnswers;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.chart.PrevalenceChart;
import org.dentary.prevalence.cut.DataCutService;
import org.dentary.prevalence.cut.DataCutView;
import org.dentary.prevalence.detection.ChanceAnswers;
import org.dentary.prevalence.detection.ChanceOfDetection;
import org.dentary.prevalence.detection.ChanceService;
import org.dentary.prevalence.detection.ChanceService.SeasonCount;
import org.dentary.prevalence.pictures.PictureQueries.Waited;
import org.dentary.prevalence.pictures.PictureQueries.Week;
import org.dentary.prevalence.question.ReportQuestion;
import org.dentary.prevalence.table.PrevalenceTables;
import org.dentary.statistics.IntervalMethod;

/** Makes the pictures of a season from what prevalence and chance of detection count. */
@ApplicationScoped
public class PictureService {
    private static final String CLASSES = "classes";
    static final List<String> NAMES = List.of(CLASSES, "map", "progress", "weeks", "seasons", "turnaround");
    private static final List<String> NOT_OF_PICTURES = List.of("outcome", "exclusion", "hasSpecimen");

    /** Those that are drawn from the chance of detection by unit, which is worked out once for both. */
    private static final List<String> BY_UNIT = List.of("map", "progress");

    private final ChanceService chances;
    private final ChanceAnswers answers;
    private final PrevalenceAnswers reports;
    private final PrevalenceTables tables;
    private final PrevalenceChart chart;
    private final PictureAnswers stored;
    private final PictureQueries queries;
    private final DataCutService cuts;
    private final PlanService plan;
    private final Names names;
    private final PlanClock zone;
    private final Snapshot snapshot;
    private final Clock clock;

    PictureService(
            ChanceService chances,
            ChanceAnswers answers,
            PrevalenceAnswers reports,
            PrevalenceTables tables,
            PrevalenceChart chart,
            PictureAnswers stored,
            PictureQueries queries,
            DataCutService cuts,
            PlanService plan,
            Names names,
            PlanClock zone,
            Snapshot snapshot,
            Clock clock) {
        this.chances = chances;
        this.answers = answers;
        this.reports = reports;
        this.tables = tables;
        this.chart = chart;
        this.stored = stored;
        this.queries = queries;
        this.cuts = cuts;
        this.plan = plan;
        this.names = names;
        this.zone = zone;
        this.snapshot = snapshot;
        this.clock = clock;
    }

    /** All pictures, in the order of {@link #NAMES}. */
    List<Picture> all(ReportQuestion question, Shading shading) {
        ChanceOfDetection report = answers.of(question).report();
        return NAMES.stream().map(name -> make(name, question, report, shading)).toList();
    }

    /**
     * One picture.
     *
     * @throws NotFound if there is none of that name
     */
    Picture one(String name, ReportQuestion question, Shading shading) {
        if (!NAMES.contains(name)) {
            throw new NotFound(
                    "PICTURE_UNKNOWN", "There is no picture '" + name + "'; there are " + String.join(", ", NAMES));
        }
        return make(name, question, BY_UNIT.contains(name) ? byUnit(question) : null, shading);
    }

    private ChanceOfDetection byUnit(ReportQuestion question) {
        return answers.of(question.inDefaultRows(IntervalMethod.WILSON)).report();
    }

    /**
     * The pictures that a prevalence report is handed over with, besides its own.
     *
     * @param question settled, of any rows and interval
     */
    public Hanging with(ReportQuestion question) {
        List<Picture> hung = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        if (NOT_OF_PICTURES.stream().anyMatch(question::filters)) {
            return new Hanging(
                    hung,
                    List.of(
                            "Pictures of the season are left out: this report asks for some outcomes or exclusions only, and"
                                    + " they count every animal with a result."));
        }
        ReportQuestion asked = question.inDefaultRows(question.interval());
        ChanceOfDetection units = null;
        for (String name : NAMES.stream().filter(one -> !one.equals(CLASSES)).toList()) {
            try {
                if (units == null && BY_UNIT.contains(name)) {
                    units = byUnit(asked);
                }
                hung.add(make(name, asked, units, Shading.TESTED));
            } catch (DomainException fault) {
                leftOut.add("Left out: " + name + ". " + fault.getMessage());
            }
        }
        return new Hanging(hung, leftOut);
    }

    /** Live and when, or the cut with its moment, and why it should no longer be used, in a sentence. */
    String standsOn(ReportQuestion question) {
        if (question.cut() == null) {
            return "Live, as of " + zone.told(clock.instant()) + ".";
        }
        DataCutView cut = cuts.require(question.cut());
        return "Data cut “" + cut.name() + "” of " + zone.told(cut.madeAt()) + "."
                + (cut.supersededReason() == null ? "" : " Superseded: " + cut.supersededReason() + ".");
    }

    /** Why the cut should no longer be used; null: it may, or the question is live. */
    String superseded(ReportQuestion question) {
        return question.cut() == null ? null : cuts.require(question.cut()).supersededReason();
    }

    /** Pictures, and for each that could not be made a sentence why. */
    public record Hanging(List<Picture> pictures, List<String> leftOut) {}

    private Picture make(String name, ReportQuestion question, ChanceOfDetection report, Shading shading) {
        String what = names.of(question.disease(), question.season());
        return switch (name) {
            case CLASSES -> {
                PrevalenceReport classes =
                        reports.of(question.inDefaultRows(question.interval())).report();
                yield ClassesPicture.of(classes, tables.of(classes), chart, what);
            }
            case "map" ->
                MapPicture.of(
                        report,
                        rows(name, question, UnitBoundary.class).stream()
                                .map(Outline::of)
                                .toList(),
                        shading,
                        what);
            case "progress" -> ProgressPicture.of(report, what);
            case "weeks" -> WeeksPicture.of(what, rows(name, question, Week.class));
            case "seasons" -> SeasonsPicture.of(question, rows(name, question, SeasonCount.class), names);
            default -> TurnaroundPicture.of(what, rows(name, question, Waited.class));
        };
    }

    private <T> List<T> rows(String picture, ReportQuestion question, Class<T> row) {
        return stored.rows(
                question,
                picture,
                row,
                () -> counted(picture, question).stream().map(row::cast).toList());
    }

    /** What a picture is drawn from, counted now; progress to target has nothing of its own. */
    List<?> counted(String picture, ReportQuestion question) {
        Instant at = question.cut() == null
                ? clock.instant()
                : cuts.require(question.cut()).madeAt();
        return switch (picture) {
            case "map" -> plan.boundaries();
            case "weeks" -> snapshot.read(() -> queries.weeks(question, at));
            case "seasons" -> chances.seasons(question);
            default ->
                snapshot.read(() -> queries.turnaround(question, at, zone.zone().getId()));
        };
    }
}
