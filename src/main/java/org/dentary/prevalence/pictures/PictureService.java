package org.dentary.prevalence.pictures;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.dentary.plan.PlanService;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.NotFound;
import org.dentary.prevalence.DataCutService;
import org.dentary.prevalence.ReportQuestion;
import org.dentary.prevalence.ReportZone;
import org.dentary.prevalence.detection.ChanceAnswers;
import org.dentary.prevalence.detection.ChanceOfDetection;
import org.dentary.prevalence.detection.ChanceService;

/** Makes the pictures of a season from what prevalence and chance of detection count. */
@ApplicationScoped
public class PictureService {
    static final List<String> NAMES = List.of("map", "progress", "weeks", "seasons", "turnaround");

    private final ChanceService chances;
    private final ChanceAnswers answers;
    private final PictureQueries queries;
    private final DataCutService cuts;
    private final PlanService plan;
    private final ReportZone zone;
    private final Snapshot snapshot;
    private final Clock clock;

    PictureService(
            ChanceService chances,
            ChanceAnswers answers,
            PictureQueries queries,
            DataCutService cuts,
            PlanService plan,
            ReportZone zone,
            Snapshot snapshot,
            Clock clock) {
        this.chances = chances;
        this.answers = answers;
        this.queries = queries;
        this.cuts = cuts;
        this.plan = plan;
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
        boolean byUnit = name.equals("map") || name.equals("progress");
        return make(name, question, byUnit ? answers.of(question).report() : null, shading);
    }

    private Picture make(String name, ReportQuestion question, ChanceOfDetection report, Shading shading) {
        Instant at = question.cut() == null
                ? clock.instant()
                : cuts.require(question.cut()).madeAt();
        return switch (name) {
            case "map" ->
                MapPicture.of(
                        report, plan.boundaries().stream().map(Outline::of).toList(), shading);
            case "progress" -> ProgressPicture.of(report);
            case "weeks" -> WeeksPicture.of(question, snapshot.read(() -> queries.weeks(question, at)));
            case "seasons" -> SeasonsPicture.of(question, chances.seasons(question));
            default ->
                TurnaroundPicture.of(
                        question,
                        snapshot.read(() ->
                                queries.turnaround(question, at, zone.zone().getId())));
        };
    }
}
