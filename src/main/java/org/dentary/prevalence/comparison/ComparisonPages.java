package org.dentary.prevalence.comparison;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.request.Reply;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.cut.DataCutService;
import org.dentary.prevalence.cut.DataCutView;
import org.dentary.prevalence.question.Choice;
import org.dentary.prevalence.question.QuestionForm;

/** The comparisons page: the question as a form in the address, the answer as sentences and tables. */
@Path("/prevalence")
public class ComparisonPages {
    private final ComparisonService comparisons;
    private final PlanService plan;
    private final DataCutService cuts;
    private final HerdQueries herds;
    private final PlanClock clocks;
    private final Clock clock;

    ComparisonPages(
            ComparisonService comparisons,
            PlanService plan,
            DataCutService cuts,
            HerdQueries herds,
            PlanClock clocks,
            Clock clock) {
        this.comparisons = comparisons;
        this.plan = plan;
        this.cuts = cuts;
        this.herds = herds;
        this.clocks = clocks;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "prevalence")
    static class Templates {
        static native TemplateInstance comparisons(ComparisonForm form, ComparisonTable table, String fault);
    }

    @GET
    @Path("comparisons")
    @Produces(MediaType.TEXT_HTML)
    @PermissionsAllowed(Act.REPORT_READ)
    public Response page(@Context UriInfo address) {
        MultivaluedMap<String, String> asked = new MultivaluedHashMap<>();
        address.getQueryParameters()
                .forEach((name, texts) ->
                        texts.stream().filter(text -> !text.isBlank()).forEach(text -> asked.add(name, text)));
        if (!asked.containsKey("season")) {
            plan.seasonToReport(clocks.day(clock.instant()))
                    .ifPresent(season -> asked.putSingle("season", season.code()));
        }
        ComparisonForm form = form(asked);
        if (!asked.containsKey("season")) {
            return Reply.page(200, Templates.comparisons(form, null, "No season is set up yet."));
        }
        try {
            ComparisonService.Settled settled = comparisons.settle(ComparisonQuestion.of(asked));
            ComparisonTable table = ComparisonTable.of(
                    comparisons.answer(settled),
                    comparisons.superseded(settled.here()),
                    comparisons.superseded(settled.other()),
                    clocks);
            return Reply.page(200, Templates.comparisons(form, table, null));
        } catch (DomainException fault) {
            return Reply.page(fault.status(), Templates.comparisons(form, null, fault.getMessage()));
        }
    }

    private ComparisonForm form(MultivaluedMap<String, String> asked) {
        String season = asked.getFirst("season");
        return new ComparisonForm(
                Choice.of(plan.seasons(), SeasonView::code, SeasonView::name, season, null),
                Choice.of(plan.diseases(), d -> d.code(), d -> d.name(), asked.getFirst("disease"), null),
                Choice.of(plan.units(), u -> u.code(), u -> u.name(), asked.getFirst("unit"), "All units"),
                Choice.of(
                        season == null ? List.<DataCutView>of() : cuts.all(season),
                        DataCutView::id,
                        DataCutView::name,
                        asked.getFirst("cut"),
                        "Live, as of now"),
                others(season, asked.getFirst("with")),
                Choice.of(
                        herds.all(),
                        HerdStructure::code,
                        herd -> herd.name() + ", " + Words.day(herd.asOf()),
                        asked.getFirst("herd"),
                        "No herd"),
                typed(asked, "ageFawn", "0.5"),
                typed(asked, "ageYearling", "1.5"),
                typed(asked, "ageAdult", ""),
                QuestionForm.query(asked));
    }

    private List<Choice> others(String season, String chosen) {
        List<Choice> others = new ArrayList<>();
        others.add(new Choice("", "No other season", chosen == null));
        List<SeasonView> seasons = new ArrayList<>(plan.seasons());
        java.util.Collections.reverse(seasons);
        List<DataCutView> all = cuts.all(null);
        for (SeasonView other : seasons) {
            if (!other.code().equals(season)) {
                others.add(new Choice(
                        other.code(), other.name() + ", live", other.code().equals(chosen)));
                all.stream()
                        .filter(cut -> cut.season().equals(other.code()))
                        .forEach(cut -> others.add(new Choice(
                                cut.id(),
                                other.name() + ", cut “" + cut.name() + "”",
                                cut.id().equals(chosen))));
            }
        }
        return others;
    }

    private static String typed(MultivaluedMap<String, String> asked, String name, String first) {
        return asked.containsKey(name) ? asked.getFirst(name) : asked.containsKey("ageAdult") ? "" : first;
    }
}
