package org.dentary.prevalence.truth;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.RawString;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.request.Reply;
import org.dentary.prevalence.Names;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.chart.PrevalenceChart.Use;
import org.dentary.prevalence.cut.DataCutService;
import org.dentary.prevalence.cut.DataCutView;
import org.dentary.prevalence.linelist.FilterWords;
import org.dentary.prevalence.performance.PerformanceQueries;
import org.dentary.prevalence.performance.PerformanceSet;
import org.dentary.prevalence.table.DimensionValues;

/** The page of true prevalence: the question as a form in the address, the answer as warnings, table, picture and notes. */
@Path("/true-prevalence")
public class TruthPages {
    private final TruthAnswers answers;
    private final PerformanceQueries performances;
    private final TruthPicture picture;
    private final PlanService plan;
    private final DataCutService cuts;
    private final DimensionValues values;
    private final Names names;
    private final FilterWords filters;
    private final PlanClock zone;
    private final Clock clock;

    TruthPages(
            TruthAnswers answers,
            PerformanceQueries performances,
            TruthPicture picture,
            PlanService plan,
            DataCutService cuts,
            DimensionValues values,
            Names names,
            FilterWords filters,
            PlanClock zone,
            Clock clock) {
        this.answers = answers;
        this.performances = performances;
        this.picture = picture;
        this.plan = plan;
        this.cuts = cuts;
        this.values = values;
        this.names = names;
        this.filters = filters;
        this.zone = zone;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "prevalence")
    static class Templates {
        static native TemplateInstance truePrevalence(
                TruthForm form, TruthPage page, List<PerformanceSet> sets, String fault);
    }

    /**
     * What the page shows of an answer.
     *
     * @param disease its name
     * @param asOf when its lines were read, on people's clocks
     * @param only which animals alone; empty for all that a report counts
     * @param superseded why the cut should no longer be used, or null
     * @param tests what the set speaks of
     */
    record TruthPage(
            TruthTable table,
            String disease,
            String asOf,
            String only,
            String superseded,
            String tests,
            RawString wide,
            RawString narrow) {}

    @GET
    @Produces(MediaType.TEXT_HTML)
    @PermissionsAllowed(Act.REPORT_READ)
    public Response page(@Context UriInfo address) {
        Map<String, List<String>> asked = new LinkedHashMap<>();
        address.getQueryParameters().forEach((name, texts) -> {
            List<String> said = texts.stream().filter(text -> !text.isBlank()).toList();
            if (!said.isEmpty()) {
                asked.put(name, said);
            }
        });
        if (!asked.containsKey("season")) {
            plan.seasonToReport(zone.day(clock.instant()))
                    .ifPresent(season -> asked.put("season", List.of(season.code())));
        }
        List<PerformanceSet> sets = performances.all().sets();
        TruthForm form = form(asked, sets);
        if (!asked.containsKey("season")) {
            return Reply.page(200, Templates.truePrevalence(form, null, sets, "No season is set up yet."));
        }
        if (!asked.containsKey("performance")) {
            return Reply.page(200, Templates.truePrevalence(form, null, sets, null));
        }
        try {
            TruthAnswers.Answer answer = answers.of(TruthQuestion.of(asked));
            return Reply.page(200, Templates.truePrevalence(form, shown(answer), sets, null));
        } catch (DomainException fault) {
            return Reply.page(fault.status(), Templates.truePrevalence(form, null, sets, fault.getMessage()));
        }
    }

    private TruthPage shown(TruthAnswers.Answer answer) {
        TruthReport report = answer.report();
        return new TruthPage(
                TruthTable.of(report, values),
                names.disease(report.disease()),
                zone.told(report.asOf()),
                filters.told(report.filter()),
                answer.superseded(),
                TruthWords.tests(report.performance(), TruthWords.methodNames(plan)),
                new RawString(picture.svg(report, Use.PAGE)),
                new RawString(picture.svg(report, Use.NARROW_PAGE)));
    }

    private TruthForm form(Map<String, List<String>> asked, List<PerformanceSet> sets) {
        String season = asked.containsKey("season") ? asked.get("season").get(0) : null;
        return TruthForm.of(
                List.of(
                        TruthForm.pick(
                                "season", "Season", plan.seasons(), SeasonView::code, SeasonView::name, asked, null),
                        TruthForm.pick(
                                "disease", "Disease", plan.diseases(), d -> d.code(), d -> d.name(), asked, null),
                        TruthForm.pick("species", "Species", plan.species(), s -> s.code(), s -> s.name(), asked, null),
                        TruthForm.pick("unit", "Unit", plan.units(), u -> u.code(), u -> u.name(), asked, "All units"),
                        TruthForm.pick("by", "By", TruthForm.BREAKDOWNS, b -> b[0], b -> b[1], asked, null),
                        TruthForm.pick(
                                "performance",
                                "Test performance",
                                sets,
                                PerformanceSet::code,
                                set -> set.name()
                                        + (set.kind() == PerformanceSet.Kind.RELATIVE
                                                ? " (relative: not usable here)"
                                                : ""),
                                asked,
                                "Choose a set"),
                        TruthForm.pick(
                                "confidence",
                                "Level of the intervals",
                                List.of("0.95", "0.9", "0.99"),
                                level -> level,
                                level -> Words.percent(Double.valueOf(level), 1),
                                asked,
                                null),
                        TruthForm.pick(
                                "cut",
                                "Stands on",
                                season == null ? List.<DataCutView>of() : cuts.all(season),
                                DataCutView::id,
                                DataCutView::name,
                                asked,
                                "Live, as of now")),
                asked);
    }
}
