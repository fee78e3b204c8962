package org.dentary.custody.desk;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import org.dentary.custody.evidence.PhotoForms;
import org.dentary.custody.handover.AcceptHandOver;
import org.dentary.custody.handover.HandOverService;
import org.dentary.custody.handover.HandOverView;
import org.dentary.custody.handover.OfferAnswerService;
import org.dentary.custody.handover.RefuseHandOver;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** Custody as a page: what is offered to me, what I have, and the hand-over itself. A button pressed twice acts once. */
@Path("/custody")
@Produces(MediaType.TEXT_HTML)
public class DeskPages {
    private final HandOverService handOvers;
    private final OfferAnswerService answers;
    private final DeskReading desks;
    private final FormChecks checks;
    private final PhotoForms photos;
    private final CurrentAccount current;
    private final Clock clock;

    DeskPages(
            HandOverService handOvers,
            OfferAnswerService answers,
            DeskReading desks,
            FormChecks checks,
            PhotoForms photos,
            CurrentAccount current,
            Clock clock) {
        this.handOvers = handOvers;
        this.answers = answers;
        this.desks = desks;
        this.checks = checks;
        this.photos = photos;
        this.current = current;
        this.clock = clock;
    }

    /** An answer to an offer as it was typed; every field may be null. */
    record Counted(UUID offer, String codes, String reason, List<UUID> photos) {
        static final Counted NOTHING = new Counted(null, null, null, List.of());

        /** The codes counted for that offer, so that a fault loses no scan; empty until somebody counts. */
        public String codesFor(UUID id) {
            return id.equals(offer) && codes != null ? codes : "";
        }

        /** Photographs kept for the answer to that offer. */
        public List<UUID> photosFor(UUID id) {
            return id.equals(offer) ? photos : List.of();
        }

        public boolean hasPhotosOf(UUID id) {
            return !photosFor(id).isEmpty();
        }

        public String reasonFor(UUID id) {
            return id.equals(offer) && reason != null ? reason : "";
        }
    }

    @CheckedTemplate(basePath = "custody")
    static class Templates {
        static native TemplateInstance custody(
                Desk desk, HandOverForm form, Counted counted, HandOverView done, Faults faults);
    }

    @GET
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    public TemplateInstance page(
            @QueryParam("codes") String codes,
            @QueryParam("done") String done,
            @QueryParam("to-me") String toMe,
            @QueryParam("from-me") String fromMe,
            @QueryParam("held") String held,
            @QueryParam("stored") String stored) {
        Desk desk = desks.desk(Desk.Marks.of(toMe, fromMe, held, stored));
        return Templates.custody(desk, HandOverForm.fresh(codes), Counted.NOTHING, done(done), Faults.NONE);
    }

    @POST
    @Path("hand-overs")
    @Consumes({MediaType.MULTIPART_FORM_DATA, MediaType.APPLICATION_FORM_URLENCODED})
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    public Response offer(@BeanParam HandOverForm form, @RestForm("photo") FileUpload photo) {
        try {
            UUID id = form.id();
            form.receiver = desks.receiver(form.to);
            form.photos = photos.keep(id, form.photos, photo).stream()
                    .map(UUID::toString)
                    .toList();
            handOvers.offerForm(id, checks.checked(form.command(now())), HandOverForm.said(form.occurredAt) != null);
            return done(id);
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(Templates.custody(
                            desks.desk(),
                            form,
                            Counted.NOTHING,
                            null,
                            FormChecks.shown(fault, desks.zones().get(0))))
                    .build();
        }
    }

    @POST
    @Path("hand-overs/{id}/acceptance")
    @Consumes({MediaType.MULTIPART_FORM_DATA, MediaType.APPLICATION_FORM_URLENCODED})
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    public Response accept(
            @PathParam("id") UUID id,
            @RestForm String codes,
            @RestForm("photos") List<String> before,
            @RestForm("photo") FileUpload photo) {
        return answer(
                new Counted(id, codes, null, List.of()),
                before,
                photo,
                kept -> answers.acceptForm(
                        id, checks.checked(new AcceptHandOver(HandOverForm.lines(codes), now(), null, null, kept))));
    }

    @POST
    @Path("hand-overs/{id}/refusal")
    @Consumes({MediaType.MULTIPART_FORM_DATA, MediaType.APPLICATION_FORM_URLENCODED})
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    public Response refuse(
            @PathParam("id") UUID id,
            @RestForm String reason,
            @RestForm("photos") List<String> before,
            @RestForm("photo") FileUpload photo) {
        return answer(new Counted(id, null, reason, List.of()), before, photo, kept -> {
            if (reason == null || reason.isBlank()) {
                throw InvalidInput.field("reason-" + id, "REQUIRED", "Say why");
            }
            answers.refuseForm(id, checks.checked(new RefuseHandOver(null, reason.strip(), now(), null, kept)));
        });
    }

    private Response answer(Counted typed, List<String> before, FileUpload photo, Consumer<List<UUID>> act) {
        Counted counted = typed;
        try {
            List<UUID> kept = photos.keep(answerKey(counted.offer()), before, photo);
            counted = new Counted(typed.offer(), typed.codes(), typed.reason(), kept);
            act.accept(kept);
            return done(counted.offer());
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(Templates.custody(
                            desks.desk(),
                            HandOverForm.fresh(null),
                            counted,
                            null,
                            FormChecks.shown(fault, desks.zones().get(0))))
                    .build();
        }
    }

    /** Several people may answer an offer; each one's photographs have ids of their own. */
    private UUID answerKey(UUID offer) {
        return UUID.nameUUIDFromBytes((offer + " by " + current.get().actor()).getBytes(StandardCharsets.UTF_8));
    }

    private static Response done(UUID id) {
        return Response.seeOther(URI.create("/custody?done=" + id)).build();
    }

    private HandOverView done(String id) {
        try {
            return id == null ? null : handOvers.view(UUID.fromString(id));
        } catch (IllegalArgumentException | NotFound fault) {
            return null;
        }
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }
}
