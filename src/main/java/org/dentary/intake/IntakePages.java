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
import java.time.Clock;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.animal.AnimalService;
import org.dentary.animal.AnimalView;
import org.dentary.jaw.key.KeyQuestion;
import org.dentary.kit.KitService;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.plan.StationView;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.request.ETags;
import org.dentary.story.AnimalStory;
import org.dentary.story.StoryService;

/** The form for gloves: scan a label of the kit, take the deer in, scan the next. */
@Path("/intake")
@Produces(MediaType.TEXT_HTML)
public class IntakePages {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm");

    private final IntakeService intake;
    private final StoryService stories;
    private final KitService kits;
    private final AnimalService animals;
    private final PeopleService people;
    private final PlanService plan;
    private final BodyReader bodies;
    private final CurrentAccount current;
    private final ObjectMapper json;
    private final Clock clock;

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
            Clock clock) {
        this.intake = intake;
        this.stories = stories;
        this.kits = kits;
        this.animals = animals;
        this.people = people;
        this.plan = plan;
        this.bodies = bodies;
        this.current = current;
        this.json = json;
        this.clock = clock;
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
        IntakeForm form = known.map(animal -> Correction.form(animal)).orElseGet(() -> fresh(carried));
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
            ObjectNode body = form.body(json, zone(form.value("station")));
            if (known) {
                Correction.keep(body, animals.animal(kit));
            }
            TakeInAnimal animal = bodies.read(body, TakeInAnimal.class);
            intake.take(kit, animal, known ? ETags.of(Integer.parseInt(form.value("version"))) : null);
        } catch (DomainException refusal) {
            return again(kit, form, known, false, shown(refusal));
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

    /** The API's field names led back to those of the form. */
    static Faults shown(DomainException refusal) {
        return new Faults(Faults.of(refusal).all().stream()
                .map(fault -> new FieldProblem(field(fault.field()), fault.rule(), words(fault)))
                .toList());
    }

    /** A question of the key that waits for its answer is asked again as the page asks it; the API names its values. */
    private static String words(FieldProblem fault) {
        String cue = fault.field().replaceFirst("^jawReading\\.", "");
        return Arrays.stream(KeyQuestion.values())
                .filter(question -> question.field().equals(cue) && fault.rule().equals("REQUIRED"))
                .map(question -> question.question() + " Pick an answer; “Unsure” is one.")
                .findFirst()
                .orElse(fault.message());
    }

    private static String field(String of) {
        if (of.startsWith("specimens[")) {
            return of.endsWith("collectedAt") ? "at" : "specimens";
        }
        if (of.startsWith("jawReading.")) {
            String cue = of.substring("jawReading.".length());
            return cue.equals("readAt") ? "at" : cue.equals("note") ? "jawNote" : "jaw." + cue;
        }
        String privately = PrivateForm.field(of);
        return privately != null ? privately : of.startsWith("identifiers[") ? "identifier" : of;
    }

    private IntakeForm fresh(IntakeForm carried) {
        List<StationView> served = plan.stations().stream()
                .filter(station -> current.get().serves(station.code()))
                .toList();
        String station = carried.value("station").isEmpty()
                ? served.isEmpty() ? "" : served.get(0).code()
                : carried.value("station");
        String unit = served.stream()
                .filter(each -> each.code().equals(station) && each.unit() != null)
                .map(StationView::unit)
                .findFirst()
                .orElse("");
        ZonedDateTime now = clock.instant().atZone(zone(station));
        IntakeForm form = carried.with("station", station)
                .with("at", MINUTE.format(now))
                .with("readingId", UUID.randomUUID().toString())
                .with("clinicalSigns", "NOT_OBSERVED");
        form = defaulted(form, "managementUnit", unit);
        form = defaulted(form, "sexEvidence", "UNKNOWN");
        form = defaulted(form, "diedOn", now.toLocalDate().toString());
        form = defaulted(form, "mortalitySource", "HUNTER_HARVEST");
        form = defaulted(form, "collectionRoute", "STATION");
        form = defaulted(form, "samplingBasis", "MANDATORY");
        form = defaulted(form, "preservation", "FRESH_CHILLED");
        return defaulted(
                form,
                "species",
                plan.species().isEmpty() ? "" : plan.species().get(0).code());
    }

    private static IntakeForm defaulted(IntakeForm form, String field, String value) {
        return form.value(field).isEmpty() && !value.isEmpty() ? form.with(field, value) : form;
    }

    private ZoneId zone(String station) {
        return plan.stations().stream()
                .filter(each -> each.code().equals(station))
                .findFirst()
                .map(StationView::zone)
                .orElse(ZoneOffset.UTC);
    }

    private static UriBuilder carrying(String path, IntakeForm form) {
        UriBuilder address = UriBuilder.fromPath(path);
        IntakeForm.CARRIED.stream()
                .filter(field -> !form.value(field).isEmpty())
                .forEach(field -> address.queryParam(field, form.value(field)));
        return address;
    }
}
