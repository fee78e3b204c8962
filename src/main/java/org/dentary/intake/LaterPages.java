package org.dentary.intake;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
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
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.jaw.ReadJaw;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.specimen.TakeSpecimen;
import org.dentary.story.AnimalStory;
import org.dentary.story.StoryService;

/** What comes later than the intake: a reading of the jaw, tissue taken days after. */
@Path("/animals")
@Produces(MediaType.TEXT_HTML)
public class LaterPages {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm");

    private final IntakeService intake;
    private final StoryService stories;
    private final PlanService plan;
    private final BodyReader bodies;
    private final CurrentAccount current;
    private final ObjectMapper json;
    private final Clock clock;

    LaterPages(
            IntakeService intake,
            StoryService stories,
            PlanService plan,
            BodyReader bodies,
            CurrentAccount current,
            ObjectMapper json,
            Clock clock) {
        this.intake = intake;
        this.stories = stories;
        this.plan = plan;
        this.bodies = bodies;
        this.current = current;
        this.json = json;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "intake")
    static class Templates {
        static native TemplateInstance jaw(AnimalStory story, IntakeForm form, IntakeChoices choices, Faults faults);

        static native TemplateInstance tissue(AnimalStory story, IntakeForm form, IntakeChoices choices, Faults faults);
    }

    @GET
    @Path("{kit}/jaw")
    @PermissionsAllowed(Act.INTAKE)
    public TemplateInstance jaw(@PathParam("kit") String kit) {
        AnimalStory story = stories.story(kit, current.get());
        return Templates.jaw(story, fresh(story), IntakeChoices.of(plan, current.get()), Faults.NONE);
    }

    /** Keeps the reading and shows the animal. */
    @POST
    @Path("{kit}/jaw")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.INTAKE)
    public Response read(@PathParam("kit") String kit, MultivaluedMap<String, String> fields) {
        AnimalStory story = stories.story(kit, current.get());
        IntakeForm form = IntakeForm.of(fields);
        try {
            ObjectNode reading = form.reading(json, zone(story));
            if (!story.jawReadings().isEmpty()) {
                reading.put("blind", false); // the page has shown them
            }
            intake.read(kit, id(form), bodies.read(reading, ReadJaw.class));
        } catch (DomainException refusal) {
            List<FieldProblem> faults = new ArrayList<>();
            FormFaults.of(refusal).all().forEach(fault -> faults.add(cue(fault)));
            return Response.status(422)
                    .entity(Templates.jaw(story, form, IntakeChoices.of(plan, current.get()), new Faults(faults)))
                    .build();
        }
        return Response.seeOther(URI.create("/animals/" + story.kit())).build();
    }

    @GET
    @Path("{kit}/specimens")
    @PermissionsAllowed(Act.SPECIMEN_WRITE)
    public TemplateInstance tissue(@PathParam("kit") String kit) {
        AnimalStory story = stories.story(kit, current.get());
        return Templates.tissue(story, fresh(story), IntakeChoices.of(plan, current.get()), Faults.NONE);
    }

    /** Records the tissue, all of it or none, and shows the animal. */
    @POST
    @Path("{kit}/specimens")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.SPECIMEN_WRITE)
    public Response take(@PathParam("kit") String kit, MultivaluedMap<String, String> fields) {
        AnimalStory story = stories.story(kit, current.get());
        IntakeForm form = IntakeForm.of(fields);
        try {
            ArrayNode given = form.specimens(json, zone(story));
            if (given.isEmpty()) {
                throw InvalidInput.field("specimens", "REQUIRED", "Scan at least one label");
            }
            List<TakeSpecimen> specimens = new ArrayList<>();
            for (var each : given) {
                specimens.add(bodies.read(each, TakeSpecimen.class));
            }
            intake.specimens(kit, specimens);
        } catch (DomainException refusal) {
            return Response.status(422)
                    .entity(Templates.tissue(
                            story, form, IntakeChoices.of(plan, current.get()), FormFaults.of(refusal)))
                    .build();
        }
        return Response.seeOther(URI.create("/animals/" + story.kit())).build();
    }

    /** A reading sent by itself names its fields without the prefix of the intake's body. */
    private static FieldProblem cue(FieldProblem fault) {
        return switch (fault.field()) {
            case "", "jawNote" -> fault;
            case "readAt" -> new FieldProblem("at", fault.rule(), fault.message());
            case "side" -> new FieldProblem("jawSide", fault.rule(), fault.message());
            case "jawState" -> fault;
            case "whereabouts" -> new FieldProblem("jawWhereabouts", fault.rule(), fault.message());
            case "note" -> new FieldProblem("jawNote", fault.rule(), fault.message());
            default -> new FieldProblem("jaw." + fault.field(), fault.rule(), fault.message());
        };
    }

    private IntakeForm fresh(AnimalStory story) {
        String photo = story.facts().jawStatus().equals("PHOTO_TO_READ") ? "PHOTO_ONLY" : "";
        return new IntakeForm(Map.of(
                "jawState",
                photo,
                "jawWhereabouts",
                photo,
                "at",
                MINUTE.format(clock.instant().atZone(zone(story))),
                "readingId",
                UUID.randomUUID().toString(),
                "preservation",
                "FRESH_CHILLED"));
    }

    private static UUID id(IntakeForm form) {
        try {
            return UUID.fromString(form.value("readingId"));
        } catch (IllegalArgumentException e) {
            throw InvalidInput.field("", "FORM_BROKEN", "This form lost its number; open the page again");
        }
    }

    private ZoneId zone(AnimalStory story) {
        return plan.station(story.facts().station()).zone();
    }
}
