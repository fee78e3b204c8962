package org.dentary.plan.season;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.cautions.CautionService;
import org.dentary.cautions.CautionView;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Opens a season for intake and closes it. Outside the demo it opens only when the protocol and every caution in force
 * were reviewed by a named person.
 */
@ApplicationScoped
public class SeasonStateService {
    private final SeasonRepository seasons;
    private final PlanService plan;
    private final CautionService cautions;
    private final boolean demo;

    SeasonStateService(
            SeasonRepository seasons,
            PlanService plan,
            CautionService cautions,
            @ConfigProperty(name = "dentary.demo", defaultValue = "false") boolean demo) {
        this.seasons = seasons;
        this.plan = plan;
        this.cautions = cautions;
        this.demo = demo;
    }

    /** What still forbids opening, each as a fault with what to do; empty when a season can open. */
    public List<FieldProblem> missing() {
        List<FieldProblem> missing = new ArrayList<>();
        if (demo) {
            return missing;
        }
        if (!protocolReviewed()) {
            missing.add(
                    new FieldProblem(
                            "protocol",
                            "PROTOCOL_NOT_REVIEWED",
                            "The protocol in force was not reviewed by a named person; write it among the settings, then review it"));
        }
        List<CautionView> unreviewed = cautions.unreviewed();
        if (!unreviewed.isEmpty()) {
            missing.add(new FieldProblem(
                    "cautions",
                    "CAUTIONS_NOT_REVIEWED",
                    (unreviewed.size() == 1
                                    ? "One caution in force was"
                                    : unreviewed.size() + " cautions in force were")
                            + " not reviewed by a named person; make them fit your program and review them"));
        }
        return missing;
    }

    /** Whether the protocol's edition in force has text and a named person reviewed it. */
    public boolean protocolReviewed() {
        PlanSettings settings = plan.settings();
        return !settings.everywhere(PlanSetting.PROTOCOL_TEXT).isBlank()
                && !settings.everywhere(PlanSetting.PROTOCOL_REVIEWED_BY).isBlank()
                && settings.everywhere(PlanSetting.PROTOCOL_REVIEWED_VERSION)
                        .equals(settings.everywhere(PlanSetting.PROTOCOL_VERSION));
    }

    /**
     * Opens a season for intake; opening an open one changes nothing, a closed one opens again.
     *
     * @throws RuleBroken (409) naming everything that is missing
     */
    @Transactional
    public SeasonView open(String code) {
        Season season = load(code);
        if (!season.isIn(Season.OPEN)) {
            List<FieldProblem> missing = missing();
            if (!missing.isEmpty()) {
                throw new RuleBroken(
                        missing.get(0).rule(),
                        "Season " + code + " cannot open for intake. "
                                + missing.stream().map(FieldProblem::message).collect(Collectors.joining(". ")),
                        missing);
            }
            season.become(Season.OPEN);
            seasons.flush();
        }
        return plan.season(code);
    }

    /**
     * Closes a season for intake; closing a closed one changes nothing.
     *
     * @throws RuleBroken (409) if it never opened
     */
    @Transactional
    public SeasonView close(String code) {
        Season season = load(code);
        if (season.isIn(Season.DRAFT)) {
            throw new RuleBroken("SEASON_DRAFT", "Season " + code + " is a draft; only a season that opened can close");
        }
        season.become(Season.CLOSED);
        seasons.flush();
        return plan.season(code);
    }

    private Season load(String code) {
        Season season = seasons.findById(code);
        if (season == null) {
            throw new NotFound("SEASON_UNKNOWN", "No season '" + code + "' is set up; the list of them shows what is");
        }
        return season;
    }
}
