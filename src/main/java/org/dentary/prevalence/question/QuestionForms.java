package org.dentary.prevalence.question;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dentary.plan.DiseaseView;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.SpeciesView;
import org.dentary.prevalence.cut.DataCutService;
import org.dentary.prevalence.cut.DataCutView;

/** Fills the forms of pages that ask about a season. */
@ApplicationScoped
public class QuestionForms {
    private final PlanService plan;
    private final DataCutService cuts;
    private final PlanClock zone;
    private final Clock clock;

    QuestionForms(PlanService plan, DataCutService cuts, PlanClock zone, Clock clock) {
        this.plan = plan;
        this.cuts = cuts;
        this.zone = zone;
        this.clock = clock;
    }

    /** The parameters that say something; without a season the running one, or the last. */
    public Map<String, List<String>> asked(Map<String, List<String>> parameters) {
        Map<String, List<String>> asked = new LinkedHashMap<>();
        parameters.forEach((name, texts) -> {
            List<String> said = texts.stream().filter(text -> !text.isBlank()).toList();
            if (!said.isEmpty()) {
                asked.put(name, said);
            }
        });
        if (!asked.containsKey("season")) {
            plan.seasonToReport(zone.day(clock.instant()))
                    .ifPresent(season -> asked.put("season", List.of(season.code())));
        }
        return asked;
    }

    /** The form with what was asked chosen. */
    public QuestionForm of(Map<String, List<String>> asked) {
        String season = first(asked, "season");
        return new QuestionForm(
                Choice.of(plan.seasons(), SeasonView::code, SeasonView::name, season, null),
                Choice.of(plan.diseases(), DiseaseView::code, DiseaseView::name, first(asked, "disease"), null),
                Choice.of(plan.species(), SpeciesView::code, SpeciesView::name, first(asked, "species"), null),
                Choice.of(
                        season == null ? List.<DataCutView>of() : cuts.all(season),
                        DataCutView::id,
                        DataCutView::name,
                        first(asked, "cut"),
                        "Live, as of now"),
                QuestionForm.query(asked));
    }

    private static String first(Map<String, List<String>> asked, String name) {
        return asked.containsKey(name) ? asked.get(name).get(0) : null;
    }
}
