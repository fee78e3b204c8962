package org.dentary.prevalence;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.RawString;
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
import java.util.Arrays;
import java.util.List;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.DomainException;
import org.dentary.prevalence.chart.PrevalenceChart;
import org.dentary.prevalence.cut.DataCutQueries;
import org.dentary.prevalence.cut.DataCutView;
import org.dentary.prevalence.linelist.FilterWords;
import org.dentary.prevalence.question.Beside;
import org.dentary.prevalence.question.Choice;
import org.dentary.prevalence.question.QuestionForm;
import org.dentary.prevalence.question.ReportQuestion;
import org.dentary.prevalence.table.DimensionValues;
import org.dentary.prevalence.table.PrevalenceTable;
import org.dentary.statistics.IntervalMethod;

/** The prevalence page: the question as a form in the address, the answer as table, picture and steps. */
@Path("/prevalence")
@PermissionsAllowed(Act.REPORT_READ)
public class PrevalencePages {
    private final PrevalenceAnswers answers;
    private final PrevalenceChart chart;
    private final PlanService plan;
    private final DataCutQueries cuts;
    private final DimensionValues values;
    private final PrevalenceChoices choices;
    private final FilterWords filters;
    private final Names names;
    private final PlanClock zone;
    private final Clock clock;

    PrevalencePages(
            PrevalenceAnswers answers,
            PrevalenceChart chart,
            PlanService plan,
            DataCutQueries cuts,
            DimensionValues values,
            PrevalenceChoices choices,
            FilterWords filters,
            Names names,
            PlanClock zone,
            Clock clock) {
        this.answers = answers;
        this.chart = chart;
        this.plan = plan;
        this.cuts = cuts;
        this.values = values;
        this.choices = choices;
        this.filters = filters;
        this.names = names;
        this.zone = zone;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "prevalence")
    static class Templates {
        static native TemplateInstance prevalence(PrevalenceForm form, PrevalencePage page, String fault);
    }

    /**
     * What the page shows of an answer.
     *
     * @param disease its name
     * @param asOf when its lines were read, on people's clocks
     * @param superseded why the cut should no longer be used, or null
     * @param digest SHA-256 of the answer as JSON
     * @param wide the picture for a wide screen
     * @param narrow the picture for a narrow one
     */
    record PrevalencePage(
            PrevalenceTable table,
            String disease,
            String asOf,
            String only,
            String superseded,
            String digest,
            RawString wide,
            RawString narrow) {}

    @GET
    @Produces(MediaType.TEXT_HTML)
    public Response page(@Context UriInfo address) {
        MultivaluedMap<String, String> asked = new MultivaluedHashMap<>();
        address.getQueryParameters()
                .forEach((name, texts) ->
                        texts.stream().filter(text -> !text.isBlank()).forEach(text -> asked.add(name, text)));
        if (!asked.containsKey("season")) {
            plan.seasonToReport(zone.day(clock.instant()))
                    .ifPresent(season -> asked.putSingle("season", season.code()));
        }
        PrevalenceForm form = form(asked);
        if (!asked.containsKey("season")) {
            return Response.ok(Templates.prevalence(form, null, "No season is set up yet."))
                    .build();
        }
        try {
            PrevalenceAnswers.Answer told = answers.of(ReportQuestion.of(asked));
            PrevalenceReport report = told.report();
            PrevalencePage page = new PrevalencePage(
                    PrevalenceTable.of(report, values),
                    names.disease(report.disease()),
                    zone.told(report.asOf()),
                    filters.told(told.question().filters()),
                    told.superseded(),
                    told.digest(),
                    new RawString(chart.svg(report, PrevalenceChart.Use.PAGE)),
                    new RawString(chart.svg(report, PrevalenceChart.Use.NARROW_PAGE)));
            return Response.ok(Templates.prevalence(form, page, null)).build();
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(Templates.prevalence(form, null, fault.getMessage()))
                    .build();
        }
    }

    private PrevalenceForm form(MultivaluedMap<String, String> asked) {
        String season = asked.getFirst("season");
        MultivaluedMap<String, String> without = new MultivaluedHashMap<>();
        without.putAll(asked);
        without.remove(Beside.PARAMETER);
        return new PrevalenceForm(
                Choice.of(plan.seasons(), SeasonView::code, SeasonView::name, season, null),
                Choice.of(plan.diseases(), d -> d.code(), d -> d.name(), asked.getFirst("disease"), null),
                Choice.of(plan.units(), u -> u.code(), u -> u.name(), asked.getFirst("unit"), "All units"),
                PrevalenceForm.rows(asked.getFirst("by")),
                PrevalenceForm.columns(asked.getFirst("columns")),
                Choice.of(
                        Arrays.asList(IntervalMethod.values()),
                        Enum::name,
                        IntervalMethod::label,
                        asked.getFirst("interval"),
                        null),
                Choice.of(
                        season == null ? List.<DataCutView>of() : cuts.all(season),
                        DataCutView::id,
                        DataCutView::name,
                        asked.getFirst("cut"),
                        "Live, as of now"),
                choices.of(asked),
                QuestionForm.query(asked),
                QuestionForm.query(without));
    }
}
