package org.dentary.portal.stock;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Validator;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.codes.Part;
import org.dentary.kit.AccountForKits;
import org.dentary.kit.BlockService;
import org.dentary.kit.BlockView;
import org.dentary.kit.IssueBlock;
import org.dentary.kit.KitFate;
import org.dentary.kit.StockView;
import org.dentary.people.PeopleService;
import org.dentary.people.PersonView;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.StationView;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.request.Reply;
import org.jboss.resteasy.reactive.RestForm;

/** Kits: how the stations' stock adds up, issuing a block, printing it, and what became of its kits. */
@Path("/kits")
@Produces(MediaType.TEXT_HTML)
public class KitPages {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("MMM d, uuuu", Locale.US);

    private static final int FIRST_BLOCKS = 50;

    private final BlockService blocks;
    private final StockService stock;
    private final PlanService plan;
    private final PeopleService people;
    private final Validator validator;
    private final Clock clock;

    KitPages(
            BlockService blocks,
            StockService stock,
            PlanService plan,
            PeopleService people,
            Validator validator,
            Clock clock) {
        this.blocks = blocks;
        this.stock = stock;
        this.plan = plan;
        this.people = people;
        this.validator = validator;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "portal")
    static class Templates {
        static native TemplateInstance kits(List<StationStock> stock, List<BlockLine> blocks, int older, boolean all);

        static native TemplateInstance issue(
                IssueForm form,
                Faults faults,
                List<SeasonView> seasons,
                List<StationView> stations,
                List<PersonView> persons,
                List<Part> parts);

        static native TemplateInstance block(
                BlockView block,
                String issuedOn,
                BlockTally tally,
                List<StockView> stocks,
                String typedKits,
                String typedReason,
                Faults faults);
    }

    /** @param all with closed seasons and every block; else the newest blocks alone */
    @GET
    @PermissionsAllowed(Act.LABEL_PRINT)
    public TemplateInstance kits(@QueryParam("all") boolean all) {
        List<BlockView> issued = blocks.blocks();
        List<BlockView> shown = all || issued.size() <= FIRST_BLOCKS ? issued : issued.subList(0, FIRST_BLOCKS);
        Map<UUID, BlockTally> tallies = stock.tallies(shown);
        Map<String, StationView> stations =
                plan.stations().stream().collect(Collectors.toMap(StationView::code, Function.identity()));
        List<BlockLine> lines = shown.stream()
                .filter(block -> tallies.containsKey(block.id()))
                .map(block -> new BlockLine(block, tallies.get(block.id()), day(block, stations.get(block.station()))))
                .toList();
        return Templates.kits(all ? stock.stations() : stock.stationsNow(), lines, issued.size() - shown.size(), all);
    }

    @GET
    @Path("issue")
    @PermissionsAllowed(Act.KIT_ISSUE)
    public TemplateInstance issue() {
        List<SeasonView> open = open();
        LocalDate today = LocalDate.now(clock.withZone(ZoneOffset.UTC));
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

    @GET
    @Path("{block: [0-9a-f-]{36}}")
    @PermissionsAllowed(Act.LABEL_PRINT)
    public Response block(@PathParam("block") UUID id) {
        return Reply.ok(page(id, "", "", Faults.NONE));
    }

    /** Kits that came back or were lost, scanned one per line. */
    @POST
    @Path("{block: [0-9a-f-]{36}}/unused")
    @PermissionsAllowed(Act.KIT_ISSUE)
    public Response unused(
            @PathParam("block") UUID id, @RestForm String kits, @RestForm String fate, @RestForm String reason) {
        List<String> scanned = kits == null
                ? List.of()
                : kits.lines()
                        .map(String::strip)
                        .filter(line -> !line.isEmpty())
                        .toList();
        KitFate what = Stream.of(KitFate.values())
                .filter(f -> f.name().equals(fate))
                .findFirst()
                .orElse(null);
        Faults faults = Faults.of(validator.validate(new AccountForKits(scanned, what, reason)));
        if (!faults.isAny()) {
            try {
                blocks.account(id, scanned, what, reason);
                return Response.seeOther(URI.create("/kits/" + id)).build();
            } catch (DomainException refusal) {
                faults = Faults.of(refusal);
            }
        }
        return again(page(id, kits, reason, faults));
    }

    private TemplateInstance page(UUID id, String kits, String reason, Faults faults) {
        BlockView block = blocks.block(id);
        return Templates.block(
                block,
                day(block, plan.station(block.station())),
                stock.tally(id),
                StockView.all(),
                kits == null ? "" : kits,
                reason == null ? "" : reason,
                faults);
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

    private static String day(BlockView block, StationView station) {
        return DAY.format(block.issuedAt().atZone(station.zone()));
    }
}
