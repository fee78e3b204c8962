package org.dentary.jaw.practice;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.dentary.jaw.key.AgeClass;
import org.dentary.kit.KitService;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.jboss.resteasy.reactive.RestForm;

/** Practice in reading jaws: begin a round, one jaw a screen, the score with the key's steps; and the reference panel. */
@Path("/practice")
@Produces(MediaType.TEXT_HTML)
public class PracticePages {
    private final PracticeService practice;
    private final ReferencePanelService panel;
    private final KitService kits;
    private final PlanService plan;
    private final CurrentAccount current;

    PracticePages(
            PracticeService practice,
            ReferencePanelService panel,
            KitService kits,
            PlanService plan,
            CurrentAccount current) {
        this.practice = practice;
        this.panel = panel;
        this.kits = kits;
        this.plan = plan;
        this.current = current;
    }

    @CheckedTemplate(basePath = "jaw")
    static class Templates {
        static native TemplateInstance practice(
                List<PracticeView> rounds,
                PracticeService.Demand demand,
                String best,
                boolean met,
                String newId,
                String zone);

        static native TemplateInstance practiceJaw(PracticeView round, PracticeView.Jaw jaw, Faults faults);

        static native TemplateInstance practiceResult(PracticeView round);

        static native TemplateInstance panel(
                List<ReferenceJawView> jaws, int drawn, String kit, String newId, String zone, Faults faults);
    }

    @GET
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response start() {
        PracticeService.Demand demand = practice.demand();
        Double best = practice.best();
        return Reply.page(
                200,
                Templates.practice(
                        practice.rounds(),
                        demand,
                        best == null ? "" : String.format(Locale.ROOT, "%.0f %%", 100 * best),
                        best != null && best >= demand.needed().doubleValue(),
                        UUID.randomUUID().toString(),
                        zone()));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.PRACTICE)
    public Response begin(@RestForm String id) {
        UUID round = id(id);
        practice.begin(round);
        return Response.seeOther(URI.create("/practice/" + round)).build();
    }

    /** The next jaw of the round, or its result. */
    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response round(@PathParam("id") UUID id) {
        return round(200, id, Faults.NONE);
    }

    @POST
    @Path("{id}/{position}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.PRACTICE)
    public Response give(@PathParam("id") UUID id, @PathParam("position") int position, @RestForm String ageClass) {
        try {
            practice.answer(id, position, ageClass(ageClass));
            return Response.seeOther(URI.create("/practice/" + id)).build();
        } catch (DomainException refusal) {
            return round(refusal.status(), id, Faults.of(refusal));
        }
    }

    @GET
    @Path("panel")
    @PermissionsAllowed(Act.REFERENCE_PANEL_READ)
    public Response panel() {
        return panel(200, "", Faults.NONE);
    }

    @POST
    @Path("panel")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.PUT_RIGHT)
    public Response add(@RestForm String id, @RestForm String kit) {
        try {
            if (kit == null || kit.isBlank()) {
                throw InvalidInput.field("kit", "REQUIRED", "Scan or type the kit whose jaw goes on the panel");
            }
            panel.add(id(id), kits.kit(kit));
            return Response.seeOther(URI.create("/practice/panel")).build();
        } catch (DomainException refusal) {
            return panel(422, kit == null ? "" : kit, Faults.of(refusal));
        }
    }

    @POST
    @Path("panel/{id}/retirement")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.PUT_RIGHT)
    public Response retire(@PathParam("id") UUID id, @RestForm String reason) {
        try {
            panel.retire(id, reason);
            return Response.seeOther(URI.create("/practice/panel")).build();
        } catch (DomainException refusal) {
            return panel(422, "", Faults.of(refusal));
        }
    }

    private Response round(int status, UUID id, Faults faults) {
        PracticeView round = practice.round(id);
        Optional<PracticeView.Jaw> next = round.next();
        return Reply.page(
                status,
                next.map(jaw -> Templates.practiceJaw(round, jaw, faults))
                        .orElseGet(() -> Templates.practiceResult(round)));
    }

    private Response panel(int status, String kit, Faults faults) {
        return Reply.page(
                status,
                Templates.panel(
                        panel.all(),
                        DrawnJaws.names().size(),
                        kit,
                        UUID.randomUUID().toString(),
                        zone(),
                        faults));
    }

    /** The zone of the account's first station, else of the plan's first. */
    private String zone() {
        return plan.stations().stream()
                .filter(station -> current.get().serves(station.code()))
                .findFirst()
                .or(() -> plan.stations().stream().findFirst())
                .map(station -> station.timeZone())
                .orElse("UTC");
    }

    private static AgeClass ageClass(String given) {
        try {
            return AgeClass.valueOf(given == null ? "" : given);
        } catch (IllegalArgumentException e) {
            throw InvalidInput.field("ageClass", "INVALID_VALUE", "Choose fawn, yearling, adult or cannot tell");
        }
    }

    private static UUID id(String given) {
        try {
            return UUID.fromString(given);
        } catch (IllegalArgumentException | NullPointerException e) {
            throw InvalidInput.field("", "FORM_BROKEN", "This form lost its number; open the page again");
        }
    }
}
