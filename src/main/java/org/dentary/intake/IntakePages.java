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
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.core.UriInfo;
import java.util.Optional;
import org.dentary.animal.AnimalService;
import org.dentary.animal.AnimalView;
import org.dentary.kit.KitService;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.request.ETags;
import org.dentary.story.AnimalStory;
import org.dentary.story.StoryService;

/** The form for gloves: scan a label of the kit, take the deer in, scan the next. */
@Path("/intake")
@Produces(MediaType.TEXT_HTML)
public class IntakePages {
    private final IntakeService intake;
    private final StoryService stories;
    private final KitService kits;
    private final AnimalService animals;
    private final PeopleService people;
    private final PlanService plan;
    private final BodyReader bodies;
    private final CurrentAccount current;
    private final ObjectMapper json;
    private final FreshForm fresh;

    IntakePages(
            IntakeService intake,
            StoryService stories,
            KitService kits,
            AnimalService animals,
            PeopleService people,
            PlanService plan,
            BodyReader bodies,
            CurrentAccount current,
            ObjectMapper json,
            FreshForm fresh) {
        this.intake = intake;
        this.stories = stories;
        this.kits = kits;
        this.animals = animals;
        this.people = people;
        this.plan = plan;
        this.bodies = bodies;
        this.current = current;
        this.json = json;
        this.fresh = fresh;
    }

    @CheckedTemplate(basePath = "intake")
    static class Templates {
        static native TemplateInstance scan(
                IntakeForm form, AnimalStory done, boolean acknowledged, String typed, Faults faults);

        static native TemplateInstance deer(
                String kit, IntakeForm form, IntakeChoices choices, boolean known, boolean stop, Faults faults);
    }

    /** Asks for the kit; with {@code kit} it leads on to the form, with {@code done} it shows the deer before. */
    @GET
    @PermissionsAllowed(Act.INTAKE)
    public Response scan(@Context UriInfo address) {
        IntakeForm form = IntakeForm.of(address.getQueryParameters());
        String typed = form.value("kit");
        boolean acknowledged = people.acknowledged(current.get());
        AnimalStory done = form.value("done").isEmpty() ? null : stories.story(form.value("done"), current.get());
        if (typed.isEmpty()) {
            return Response.ok(Templates.scan(form, done, acknowledged, "", Faults.NONE))
                    .build();
        }
        try {
            return Response.seeOther(
                            carrying("/intake/" + kits.kit(typed), form).build())
                    .build();
        } catch (DomainException refusal) {
            return Response.status(422)
                    .entity(Templates.scan(form, done, acknowledged, typed, Faults.of(refusal)))
                    .build();
        }
    }

    /** The form of one deer: empty for a new one, filled for one whose facts are to be corrected. */
    @GET
    @Path("{kit}")
    @PermissionsAllowed(Act.INTAKE)
    public TemplateInstance deer(@PathParam("kit") String typed, @Context UriInfo address) {
        String kit = kits.kit(typed);
        IntakeForm carried = IntakeForm.of(address.getQueryParameters());
        Optional<AnimalView> known = animals.find(kit);
        IntakeForm form = known.map(animal -> Correction.form(animal)).orElseGet(() -> fresh.form(carried));
        return Templates.deer(kit, form, IntakeChoices.of(plan, current.get()), known.isPresent(), false, Faults.NONE);
    }

    /** Takes the deer in and asks for the next; what is wrong is shown beside what was typed. */
    @POST
    @Path("{kit}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.INTAKE)
    public Response take(@PathParam("kit") String typed, MultivaluedMap<String, String> fields) {
        IntakeForm form = IntakeForm.of(fields);
        String kit = kits.kit(typed);
        boolean known = !form.value("version").isEmpty();
        if (form.has("clinicalSigns", "SEEN") && !form.has("stopRead", "true") && !known) {
            return again(kit, form, known, true, Faults.NONE);
        }
        try {
            ObjectNode body = form.body(json, fresh.zone(form.value("station")));
            if (known) {
                Correction.keep(body, animals.animal(kit));
            }
            TakeInAnimal animal = bodies.read(body, TakeInAnimal.class);
            intake.take(kit, animal, known ? ETags.of(Integer.parseInt(form.value("version"))) : null);
        } catch (DomainException refusal) {
            return again(kit, form, known, false, FormFaults.of(refusal));
        }
        return Response.seeOther(
                        known
                                ? UriBuilder.fromPath("/animals/" + kit).build()
                                : carrying("/intake", form)
                                        .queryParam("done", kit)
                                        .build())
                .build();
    }

    private Response again(String kit, IntakeForm form, boolean known, boolean stop, Faults faults) {
        return Response.status(422)
                .entity(Templates.deer(kit, form, IntakeChoices.of(plan, current.get()), known, stop, faults))
                .build();
    }

    private static UriBuilder carrying(String path, IntakeForm form) {
        UriBuilder address = UriBuilder.fromPath(path);
        IntakeForm.CARRIED.stream()
                .filter(field -> !form.value(field).isEmpty())
                .forEach(field -> address.queryParam(field, form.value(field)));
        return address;
    }
}
