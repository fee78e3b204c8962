package org.dentary.intake;

import com.fasterxml.jackson.databind.ObjectMapper;
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
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.dentary.codes.Part;
import org.dentary.kit.KitService;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.story.AnimalStory;
import org.dentary.story.StoryService;
import org.dentary.story.Words;

/**
 * Intake where there is no signal: a form that keeps each deer on the device, and the door through which they are sent
 * later, one by one. A deer sent twice is taken in once.
 */
@Path("/intake/without-signal")
public class KeptDeerPages {
    private final IntakeService intake;
    private final FreshForm fresh;
    private final StoryService stories;
    private final KitService kits;
    private final PeopleService people;
    private final PlanService plan;
    private final BodyReader bodies;
    private final CurrentAccount current;
    private final ObjectMapper json;
    private final Clock clock;

    KeptDeerPages(
            IntakeService intake,
            FreshForm fresh,
            StoryService stories,
            KitService kits,
            PeopleService people,
            PlanService plan,
            BodyReader bodies,
            CurrentAccount current,
            ObjectMapper json,
            Clock clock) {
        this.intake = intake;
        this.fresh = fresh;
        this.stories = stories;
        this.kits = kits;
        this.people = people;
        this.plan = plan;
        this.bodies = bodies;
        this.current = current;
        this.json = json;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "intake")
    static class Templates {
        static native TemplateInstance withoutSignal(
                IntakeForm form,
                IntakeChoices choices,
                List<Part> parts,
                boolean acknowledged,
                Instant madeAt,
                Faults faults);
    }

    /**
     * What became of a deer that was sent.
     *
     * @param age its age class in words; empty where the account may not know it yet
     * @param notes contradictions of the reading and warnings about the tissue, as sentences
     * @param problems why it was not taken in, by field of the form; empty where it was
     */
    record Answer(String kit, String age, int specimens, List<String> notes, List<FieldProblem> problems) {}

    /** The form, with everything there is to choose from; a browser keeps it for when there is no signal. */
    @GET
    @Produces(MediaType.TEXT_HTML)
    @PermissionsAllowed(Act.INTAKE)
    public TemplateInstance form() {
        return Templates.withoutSignal(
                fresh.form(IntakeForm.of(new MultivaluedHashMap<>())),
                IntakeChoices.of(plan, current.get()),
                List.of(Part.values()),
                people.acknowledged(current.get()),
                clock.instant(),
                Faults.NONE);
    }

    /**
     * Takes in a deer that a device kept.
     *
     * @param fields the intake form's, with {@code account}, whose deer it is, and {@code enteredAt}, the instant it was
     *     kept
     */
    @POST
    @Path("{kit}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.INTAKE)
    public Response send(@PathParam("kit") String typed, MultivaluedMap<String, String> fields) {
        IntakeForm form = IntakeForm.of(fields);
        try {
            requireOwn(form.value("account"));
            String kit = kits.kit(typed);
            ObjectNode body = form.body(json, fresh.zone(form.value("station")));
            body.put("enteredAt", form.value("enteredAt"));
            Taken taken = intake.take(kit, bodies.read(body, TakeInAnimal.class), null);
            return Response.status(taken.isNew() ? 201 : 200)
                    .entity(answer(stories.answer(kit, current.get(), taken.warnings())))
                    .build();
        } catch (DomainException refusal) {
            return Response.status(refusal.status())
                    .entity(new Answer(
                            typed, "", 0, List.of(), FormFaults.of(refusal).all()))
                    .build();
        }
    }

    private void requireOwn(String account) {
        String username = current.get().username();
        if (!account.equals(username)) {
            throw new RuleBroken(
                    "KEPT_BY_OTHER",
                    "This deer was kept by " + account + " and " + username + " is signed in; " + account
                            + " signs in on this device and sends it");
        }
    }

    private static Answer answer(AnimalStory story) {
        String age = story.readingsHidden()
                ? ""
                : story.ageClass().equals("UNKNOWN")
                        ? "Age not known yet"
                        : Words.asWords(story.ageClass()) + (story.ageDisputed() ? ", disputed" : "");
        List<String> notes = Stream.concat(
                        story.jawReadings().stream()
                                .flatMap(reading -> reading.contradictions().stream())
                                .map(found -> found.rule() + ": " + found.message()),
                        story.warnings().stream())
                .toList();
        return new Answer(story.kit(), age, story.specimens().size(), notes, List.of());
    }
}
