package org.dentary.intake.putright;

import static java.nio.charset.StandardCharsets.UTF_8;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import java.net.URI;
import java.net.URLEncoder;
import java.util.Map;
import java.util.UUID;
import org.dentary.intake.BodyReader;
import org.dentary.intake.IntakeForm;
import org.dentary.intake.mixup.MixUpService;
import org.dentary.jaw.DesignateAge;
import org.dentary.jaw.key.AgeClass;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.ETags;
import org.dentary.specimen.AskReAttribution;
import org.dentary.specimen.ReAttributionService;
import org.dentary.story.AnimalStory;
import org.dentary.story.StoryService;

/** Putting right: a swapped label with both animals side by side, one animal under two kits, readers who differ. */
@Path("/animals")
@Produces(MediaType.TEXT_HTML)
public class PutRightPages {
    private final PutRightService putRight;
    private final ReAttributionService reAttributions;
    private final ComparisonService comparisons;
    private final StoryService stories;
    private final MixUpService mixUps;
    private final BodyReader bodies;
    private final CurrentAccount current;
    private final com.fasterxml.jackson.databind.ObjectMapper json;

    PutRightPages(
            PutRightService putRight,
            ReAttributionService reAttributions,
            ComparisonService comparisons,
            StoryService stories,
            MixUpService mixUps,
            BodyReader bodies,
            CurrentAccount current,
            com.fasterxml.jackson.databind.ObjectMapper json) {
        this.putRight = putRight;
        this.reAttributions = reAttributions;
        this.comparisons = comparisons;
        this.stories = stories;
        this.mixUps = mixUps;
        this.bodies = bodies;
        this.current = current;
        this.json = json;
    }

    @CheckedTemplate(basePath = "intake")
    static class Templates {
        static native TemplateInstance putRight(Comparison both, IntakeForm form, Faults faults);

        static native TemplateInstance age(AnimalStory story, IntakeForm form, Faults faults);
    }

    /** One animal, or two side by side where {@code with} names the other. */
    @GET
    @Path("{kit}/put-right")
    @PermissionsAllowed(Act.ANIMAL_READ)
    public TemplateInstance page(@PathParam("kit") String kit, @QueryParam("with") String with) {
        Comparison both;
        Faults faults = Faults.NONE;
        try {
            both = comparisons.of(kit, with == null || with.isBlank() ? null : mixUps.kit("second", with));
        } catch (DomainException refusal) {
            both = comparisons.of(kit, null);
            faults = Faults.of(InvalidInput.field("second", refusal.code(), refusal.getMessage()));
        }
        return Templates.putRight(both, fresh(both), faults);
    }

    private static IntakeForm fresh(Comparison both) {
        return new IntakeForm(Map.of(
                "readingId",
                UUID.randomUUID().toString(),
                "with",
                both.other() == null ? "" : both.other().story().kit()));
    }

    /** Asks that what is under a label of this animal be the other's. */
    @POST
    @Path("{kit}/put-right")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.PUT_RIGHT_ASK)
    public Response ask(@PathParam("kit") String kit, MultivaluedMap<String, String> fields) {
        IntakeForm form = IntakeForm.of(fields);
        return done(kit, form, () -> {
            AskReAttribution ask = bodies.read(
                    json.createObjectNode()
                            .put("kit", form.value("with"))
                            .put("reason", form.value("reason"))
                            .put("evidence", form.value("evidence")),
                    AskReAttribution.class);
            reAttributions.ask(form.value("code"), id(form, "readingId"), ask);
        });
    }

    @POST
    @Path("{kit}/put-right/confirmation")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.PUT_RIGHT)
    public Response confirm(@PathParam("kit") String kit, MultivaluedMap<String, String> fields) {
        IntakeForm form = IntakeForm.of(fields);
        return done(kit, form, () -> {
            if (!form.has("compared", "true")) {
                throw InvalidInput.field(
                        "compared",
                        "REQUIRED",
                        "Compare both animals with what is in your hand, then tick that you did");
            }
            reAttributions.confirm(form.value("code"), id(form, "id"));
        });
    }

    @POST
    @Path("{kit}/put-right/refusal")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.PUT_RIGHT_ASK)
    public Response refuse(@PathParam("kit") String kit, MultivaluedMap<String, String> fields) {
        IntakeForm form = IntakeForm.of(fields);
        return done(kit, form, () -> {
            SayWhy why = bodies.read(json.createObjectNode().put("reason", form.value("refusal")), SayWhy.class);
            reAttributions.refuse(form.value("code"), id(form, "id"), why.reason());
        });
    }

    /** Says that this kit is the same animal as another, or undoes it. */
    @POST
    @Path("{kit}/same-as")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.PUT_RIGHT)
    public Response link(@PathParam("kit") String kit, MultivaluedMap<String, String> fields) {
        IntakeForm form = IntakeForm.of(fields);
        return done(kit, form, () -> {
            SayWhy why = bodies.read(
                    json.createObjectNode()
                            .put("reason", form.value("linkReason"))
                            .put("evidence", form.value("linkEvidence")),
                    SayWhy.class);
            if (form.has("undo", "true")) {
                putRight.unlink(kit, why.reason());
            } else {
                putRight.link(kit, form.value("with"), why);
            }
        });
    }

    /** The readings side by side for the third person. */
    @GET
    @Path("{kit}/age")
    @PermissionsAllowed(Act.PUT_RIGHT)
    public TemplateInstance age(@PathParam("kit") String kit) {
        return Templates.age(stories.story(kit, current.get()), new IntakeForm(Map.of()), Faults.NONE);
    }

    @POST
    @Path("{kit}/age")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.PUT_RIGHT)
    public Response designate(@PathParam("kit") String kit, MultivaluedMap<String, String> fields) {
        IntakeForm form = IntakeForm.of(fields);
        try {
            boolean ofReading = form.value("stands").length() == 36;
            DesignateAge decision = new DesignateAge(
                    ofReading ? UUID.fromString(form.value("stands")) : null,
                    ofReading || form.value("stands").isEmpty() ? null : AgeClass.valueOf(form.value("stands")),
                    form.value("reason"));
            bodies.check(decision);
            String version = form.value("version");
            putRight.designate(kit, decision, version.equals("0") ? null : ETags.of(Integer.parseInt(version)));
        } catch (DomainException refusal) {
            return Response.status(422)
                    .entity(Templates.age(stories.story(kit, current.get()), form, Faults.of(refusal)))
                    .build();
        }
        return Response.seeOther(URI.create("/animals/" + kit)).build();
    }

    private Response done(String kit, IntakeForm form, Runnable act) {
        try {
            act.run();
        } catch (DomainException refusal) {
            return Response.status(422)
                    .entity(Templates.putRight(
                            shownAgain(kit, form.value(form.value("beside").isBlank() ? "with" : "beside")),
                            form,
                            Faults.of(refusal)))
                    .build();
        }
        String beside = form.value("beside");
        return Response.seeOther(UriBuilder.fromPath("/animals/{kit}/put-right")
                        .replaceQuery(beside.isBlank() ? null : "with=" + URLEncoder.encode(beside, UTF_8))
                        .build(kit))
                .build();
    }

    private static UUID id(IntakeForm form, String field) {
        try {
            return UUID.fromString(form.value(field));
        } catch (IllegalArgumentException fault) {
            throw InvalidInput.field(field, "INVALID_VALUE", "The form was damaged; load the page again");
        }
    }

    private Comparison shownAgain(String kit, String with) {
        try {
            return comparisons.of(kit, with.isBlank() ? null : mixUps.kit("with", with));
        } catch (DomainException refusal) {
            return comparisons.of(kit, null);
        }
    }
}
