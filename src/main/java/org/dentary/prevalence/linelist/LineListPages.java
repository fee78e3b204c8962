package org.dentary.prevalence.linelist;

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
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.dentary.plan.PlanClock;
import org.dentary.platform.account.Act;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.DomainException;
import org.dentary.prevalence.Names;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.cut.DataCutQueries;
import org.dentary.prevalence.cut.DataCutView;
import org.dentary.prevalence.question.Choice;
import org.dentary.prevalence.question.QuestionForm;

/** The line list as a page: a filter for each column, fifty lines a page, all of it as CSV. */
@Path("/line-list")
@PermissionsAllowed(Act.REPORT_READ)
public class LineListPages {
    private static final int PAGE = 50;
    private final LineListQueries queries;
    private final LineListResource lists;
    private final LineFilters filters;
    private final DataCutQueries cuts;
    private final Names names;
    private final Snapshot snapshot;
    private final PlanClock zone;
    private final Clock clock;

    LineListPages(
            LineListQueries queries,
            LineListResource lists,
            LineFilters filters,
            DataCutQueries cuts,
            Names names,
            Snapshot snapshot,
            PlanClock zone,
            Clock clock) {
        this.queries = queries;
        this.lists = lists;
        this.filters = filters;
        this.cuts = cuts;
        this.names = names;
        this.snapshot = snapshot;
        this.zone = zone;
        this.clock = clock;
    }

    /** The page's filters and where they lead; {@code open}: one of the others is in use. */
    record Filters(
            List<LineFilters.Field> first,
            List<LineFilters.Field> others,
            List<Choice> cuts,
            boolean open,
            String query) {}

    @CheckedTemplate(basePath = "prevalence")
    static class Templates {
        static native TemplateInstance lineList(
                Filters filters, String standsOn, List<LineRow> lines, String next, String fault);
    }

    /** A line with its codes as words; {@code died} is null where the day is not known. */
    record LineRow(
            LineView line, LocalDate died, String age, String sex, String source, String outcome, String leftOut) {
        static LineRow of(LineView line) {
            return new LineRow(
                    line,
                    line.diedOn().equals("UNKNOWN") ? null : LocalDate.parse(line.diedOn()),
                    Words.of(line.ageClass()) + (line.ageDisputed() ? " (disputed)" : ""),
                    Words.of(line.sex()),
                    Words.of(line.mortalitySource()),
                    Words.of(line.outcome()) + (line.identityException() ? " (identity exception)" : ""),
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
        Filters shown = shown(asked);
        try {
            LineListResource.Asked question = lists.asked(asked);
            List<LineView> lines = snapshot.read(() -> queries.page(
                    question.filter(), question.cut(), question.afterKit(), question.afterDisease(), PAGE + 1));
            boolean more = lines.size() > PAGE;
            List<LineView> page = more ? lines.subList(0, PAGE) : lines;
            return Response.ok(Templates.lineList(
                            shown,
                            standsOn(question.cut()),
                            page.stream().map(LineRow::of).toList(),
                            more ? next(asked, page.get(PAGE - 1)) : null,
                            null))
                    .build();
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(Templates.lineList(shown, null, List.of(), null, fault.getMessage()))
                    .build();
        }
    }

    private String standsOn(UUID id) {
        if (id == null) {
            return "Live, as of " + zone.told(clock.instant()) + ".";
        }
        DataCutView cut = cuts.require(id);
        return "Data cut “" + cut.name() + "” of " + zone.told(cut.madeAt()) + "."
                + (cut.supersededReason() == null ? "" : " Superseded: " + cut.supersededReason() + ".");
    }

    private static String next(MultivaluedMap<String, String> asked, LineView last) {
        MultivaluedMap<String, String> on = new MultivaluedHashMap<>();
        on.putAll(asked);
        on.putSingle("after", last.kit() + "." + last.disease());
        return QuestionForm.query(on);
    }

    private Filters shown(MultivaluedMap<String, String> asked) {
        MultivaluedMap<String, String> all = new MultivaluedHashMap<>();
        all.putAll(asked);
        all.remove("after");
        String season = asked.getFirst("season");
        return new Filters(
                filters.first(asked),
                filters.others(asked),
                Choice.of(
                        cuts.all(season),
                        DataCutView::id,
                        cut -> names.season(cut.season()) + ", " + cut.name(),
                        asked.getFirst("cut"),
                        "Live, as of now"),
                filters.isOtherInUse(asked),
                QuestionForm.query(all));
    }
}
