package org.dentary.portal.stock;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Validator;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dentary.codes.Part;
import org.dentary.kit.BlockService;
import org.dentary.kit.BlockView;
import org.dentary.kit.IssueBlock;
import org.dentary.people.PeopleService;
import org.dentary.people.PersonView;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.StationView;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;
import org.jboss.resteasy.reactive.RestForm;

/** Kits: how the stations' stock adds up, the blocks, issuing one. A block's own pages are {@link BlockPages}. */
@Path("/kits")
@Produces(MediaType.TEXT_HTML)
public class KitPages {
    private static final int BLOCKS_ON_A_PAGE = 50;

    private final BlockService blocks;
    private final StockService stock;
    private final PlanService plan;
    private final PeopleService people;
    private final Validator validator;
    private final PlanClock clock;

    KitPages(
            BlockService blocks,
            StockService stock,
            PlanService plan,
            PeopleService people,
            Validator validator,
            PlanClock clock) {
        this.blocks = blocks;
        this.stock = stock;
        this.plan = plan;
        this.people = people;
        this.validator = validator;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "portal")
    static class Templates {
        static native TemplateInstance kits(
                List<StationStock> stock, List<BlockLine> blocks, List<SeasonView> closed, String season, String next);

        static native TemplateInstance issue(
                IssueForm form,
                Faults faults,
                List<SeasonView> seasons,
                List<StationView> stations,
                List<PersonView> persons,
                List<Part> parts);
    }

    /**
     * @param season a season, closed or not; else those that are not closed, and the blocks of all
     * @param before the last block of the page before, else from the newest on
     */
    @GET
    @PermissionsAllowed(Act.LABEL_PRINT)
    public TemplateInstance kits(@QueryParam("season") String season, @QueryParam("before") UUID before) {
        SeasonView one = season == null || season.isBlank() ? null : plan.season(season);
        List<BlockView> found = blocks.blocks(one == null ? null : season, before, BLOCKS_ON_A_PAGE + 1);
        List<BlockView> shown = found.subList(0, Math.min(BLOCKS_ON_A_PAGE, found.size()));
        Map<UUID, BlockTally> tallies = stock.tallies(shown);
        Map<String, StationView> stations =
                plan.stations().stream().collect(Collectors.toMap(StationView::code, Function.identity()));
        List<BlockLine> lines = shown.stream()
                .map(block -> new BlockLine(
                        block, tallies.get(block.id()), BlockPages.day(block, stations.get(block.station()))))
                .toList();
        String next = found.size() <= BLOCKS_ON_A_PAGE
                ? null
                : "/kits?" + (one == null ? "" : "season=" + season + "&") + "before="
                        + shown.get(BLOCKS_ON_A_PAGE - 1).id() + "#blocks";
        return Templates.kits(
                one == null ? stock.stationsNow() : stock.stationsOf(one),
                lines,
                plan.seasons().stream().filter(s -> s.state().equals("CLOSED")).toList(),
                one == null ? "" : season,
                next);
    }

    @GET
    @Path("issue")
    @PermissionsAllowed(Act.KIT_ISSUE)
    public TemplateInstance issue() {
        List<SeasonView> open = open();
        LocalDate today = clock.today();
        String season = open.stream()
                .filter(s -> s.contains(today))
                .findFirst()
                .or(() -> open.stream().findFirst())
                .map(SeasonView::code)
                .orElse("");
        return form(IssueForm.fresh(season, ""), Faults.NONE);
    }

    @POST
    @Path("issue")
    @PermissionsAllowed(Act.KIT_ISSUE)
    public Response issue(
            @RestForm String id,
            @RestForm String season,
            @RestForm String station,
            @RestForm String person,
            @RestForm String kits,
            @RestForm String copies,
            @RestForm List<String> parts) {
        IssueForm form = new IssueForm(id, season, station, person, kits, copies, parts == null ? List.of() : parts);
        IssueBlock command = form.command();
        Faults faults = Faults.of(validator.validate(command));
        if (faults.isAny()) {
            return again(form(form, inWords(faults, form)));
        }
        try {
            UUID block = UUID.fromString(id);
            blocks.issue(block, command, null);
            return Response.seeOther(URI.create("/kits/" + block)).build();
        } catch (DomainException refusal) {
            return again(form(form, Faults.of(refusal)));
        } catch (IllegalArgumentException noId) {
            return again(form(IssueForm.fresh(season, station), Faults.NONE));
        }
    }

    private TemplateInstance form(IssueForm form, Faults faults) {
        return Templates.issue(form, faults, open(), plan.stations(), people.persons(), List.of(Part.values()));
    }

    private List<SeasonView> open() {
        return plan.seasons().stream().filter(s -> !s.state().equals("CLOSED")).toList();
    }

    /** A number that was typed as something else is quoted as typed. */
    private static Faults inWords(Faults faults, IssueForm form) {
        List<FieldProblem> told = new ArrayList<>();
        for (FieldProblem fault : faults.all()) {
            String label = switch (fault.field()) {
                case "kits" -> "The number of kits" + quoted(form.kits());
                case "copies" -> "The number of copies" + quoted(form.copies());
                case "season" -> "The season";
                case "station" -> "The station";
                case "parts" -> "The list of labels";
                default -> fault.field();
            };
            told.add(new FieldProblem(fault.field(), fault.rule(), label + " " + fault.message()));
        }
        return new Faults(told);
    }

    private static String quoted(String typed) {
        return typed == null || typed.isBlank() ? "" : " (\"" + typed.strip() + "\")";
    }

    private static Response again(TemplateInstance page) {
        return Response.status(422).entity(page).build();
    }
}
