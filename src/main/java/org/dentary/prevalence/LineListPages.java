package org.dentary.prevalence;

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
import java.util.List;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Act;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.DomainException;

/** The line list as a page: a filter for each column that people filter by, fifty lines a page, all of it as CSV. */
@Path("/line-list")
@PermissionsAllowed(Act.REPORT_READ)
public class LineListPages {
    private static final int PAGE = 50;
    private static final List<String[]> OUTCOMES = List.of(
            new String[] {"DETECTED", "Detected"},
            new String[] {"NOT_DETECTED", "Not detected"},
            new String[] {"PENDING", "Pending"},
            new String[] {"INCONCLUSIVE", "Inconclusive"},
            new String[] {"UNSUITABLE", "Unsuitable"},
            new String[] {"NOT_TESTED", "Not tested"});
    private static final List<String[]> AGES = List.of(
            new String[] {"FAWN", "Fawn"},
            new String[] {"YEARLING", "Yearling"},
            new String[] {"ADULT", "Adult"},
            new String[] {"UNKNOWN", "Unknown"});
    private static final List<String[]> SEXES = List.of(
            new String[] {"MALE", "Male"}, new String[] {"FEMALE", "Female"}, new String[] {"UNKNOWN", "Unknown"});

    private final LineListQueries queries;
    private final LineListResource lists;
    private final PlanService plan;
    private final Snapshot snapshot;

    LineListPages(LineListQueries queries, LineListResource lists, PlanService plan, Snapshot snapshot) {
        this.queries = queries;
        this.lists = lists;
        this.plan = plan;
        this.snapshot = snapshot;
    }

    /** The page's filters and where they lead. */
    record Filters(
            List<PrevalenceForm.Choice> seasons,
            List<PrevalenceForm.Choice> units,
            List<PrevalenceForm.Choice> ages,
            List<PrevalenceForm.Choice> sexes,
            List<PrevalenceForm.Choice> outcomes,
            String query) {}

    @CheckedTemplate(basePath = "prevalence")
    static class Templates {
        static native TemplateInstance lineList(Filters filters, List<LineRow> lines, String next, String fault);
    }

    /** A line with its codes as words. */
    record LineRow(LineView line, String age, String sex, String source, String outcome, String leftOut) {
        static LineRow of(LineView line) {
            return new LineRow(
                    line,
                    Words.of(line.ageClass()) + (line.ageDisputed() ? " (disputed)" : ""),
                    Words.of(line.sex()),
                    Words.of(line.mortalitySource()),
                    Words.of(line.outcome()),
                    Words.of(line.exclusion()));
        }
    }

    @GET
    @Produces(MediaType.TEXT_HTML)
    public Response page(@Context UriInfo address) {
        MultivaluedMap<String, String> asked = new MultivaluedHashMap<>();
        address.getQueryParameters()
                .forEach((name, texts) ->
                        texts.stream().filter(text -> !text.isBlank()).forEach(text -> asked.add(name, text)));
        Filters filters = filters(asked);
        try {
            LineListResource.Asked question = lists.asked(asked);
            List<LineView> lines = snapshot.read(() -> queries.page(
                    question.filter(), question.cut(), question.afterKit(), question.afterDisease(), PAGE + 1));
            boolean more = lines.size() > PAGE;
            List<LineView> page = more ? lines.subList(0, PAGE) : lines;
            return Response.ok(Templates.lineList(
                            filters,
                            page.stream().map(LineRow::of).toList(),
                            more ? next(asked, page.get(PAGE - 1)) : null,
                            null))
                    .build();
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(Templates.lineList(filters, List.of(), null, fault.getMessage()))
                    .build();
        }
    }

    private static String next(MultivaluedMap<String, String> asked, LineView last) {
        MultivaluedMap<String, String> on = new MultivaluedHashMap<>();
        on.putAll(asked);
        on.putSingle("after", last.kit() + "." + last.disease());
        return PrevalenceForm.query(on);
    }

    private Filters filters(MultivaluedMap<String, String> asked) {
        MultivaluedMap<String, String> all = new MultivaluedHashMap<>();
        all.putAll(asked);
        all.remove("after");
        return new Filters(
                PrevalenceForm.choices(
                        plan.seasons(), SeasonView::code, SeasonView::name, asked.getFirst("season"), "All seasons"),
                PrevalenceForm.choices(
                        plan.units(), u -> u.code(), u -> u.name(), asked.getFirst("managementUnit"), "All units"),
                PrevalenceForm.choices(AGES, a -> a[0], a -> a[1], asked.getFirst("ageClass"), "All ages"),
                PrevalenceForm.choices(SEXES, s -> s[0], s -> s[1], asked.getFirst("sex"), "All"),
                PrevalenceForm.choices(OUTCOMES, o -> o[0], o -> o[1], asked.getFirst("outcome"), "All outcomes"),
                PrevalenceForm.query(all));
    }
}
