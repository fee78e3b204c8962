package org.dentary.result.notification;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Validator;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.animal.vault.Contact;
import org.dentary.animal.vault.ContactService;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.result.notification.letter.LetterService;
import org.jboss.resteasy.reactive.RestForm;

/** The notifier's desk: who is to be told, what to say, and what was tried. */
@Path("/notifications")
@Produces(MediaType.TEXT_HTML)
public class NotificationPages {
    private static final int SHOWN = 100;
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm");

    private final NotificationService notifications;
    private final LetterService letters;
    private final ContactService contacts;
    private final PlanService plan;
    private final Validator validator;
    private final Clock clock;

    NotificationPages(
            NotificationService notifications,
            LetterService letters,
            ContactService contacts,
            PlanService plan,
            Validator validator,
            Clock clock) {
        this.notifications = notifications;
        this.letters = letters;
        this.contacts = contacts;
        this.plan = plan;
        this.validator = validator;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "result/notification")
    static class Templates {
        static native TemplateInstance notifications(
                List<NotificationItem> items,
                Map<String, Long> counts,
                String state,
                String season,
                List<SeasonView> seasons,
                String nextHref);

        static native TemplateInstance notification(
                NotificationService.Told told,
                AttemptForm form,
                List<AttemptForm.Choice> channels,
                List<AttemptForm.Choice> results,
                Contact contact,
                String purpose,
                Faults faults);
    }

    @GET
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response list(
            @QueryParam("state") @DefaultValue("OPEN") String state,
            @QueryParam("season") @DefaultValue("") String season,
            @QueryParam("after") String after) {
        NotificationService.Items page = notifications.page(new NotificationFilter(state, season, ""), after, SHOWN);
        Map<String, Long> counts = notifications.counts(season).stream()
                .collect(Collectors.toMap(NotificationQueries.Count::state, NotificationQueries.Count::items));
        String next = page.next() == null
                ? null
                : "/notifications?state=" + state + "&season=" + URLEncoder.encode(season, StandardCharsets.UTF_8)
                        + "&after=" + URLEncoder.encode(page.next(), StandardCharsets.UTF_8);
        return Reply.page(200, Templates.notifications(page.items(), counts, state, season, plan.seasons(), next));
    }

    @GET
    @Path("list.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response csv(@QueryParam("state") String state, @QueryParam("season") String season) {
        return NotificationsResource.csv(notifications, new NotificationFilter(state, season, ""));
    }

    @GET
    @Path("{kit}/{disease}")
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response one(@PathParam("kit") String kit, @PathParam("disease") String disease) {
        NotificationService.Told told = notifications.told(kit, disease);
        return show(200, told, fresh(told), null, "", Faults.NONE);
    }

    @GET
    @Path("{kit}/{disease}/attempts.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response attempts(@PathParam("kit") String kit, @PathParam("disease") String disease) {
        return Reply.csv(
                "tries.csv",
                List.of("id", "at", "channel", "result", "told", "by", "note", "corrected_by"),
                notifications.told(kit, disease).attempts().stream()
                        .map(a -> new Object[] {
                            a.id(), a.at(), a.channel(), a.result(), a.outcome(), a.by(), a.note(), a.correctedBy()
                        })
                        .toList());
    }

    @POST
    @Path("{kit}/{disease}/attempts")
    @PermissionsAllowed(Act.NOTIFY)
    public Response record(
            @PathParam("kit") String kit,
            @PathParam("disease") String disease,
            @RestForm String key,
            @RestForm String outcome,
            @RestForm String channel,
            @RestForm String result,
            @RestForm String at,
            @RestForm String note) {
        AttemptForm form = new AttemptForm(key, outcome, channel, result, at, note);
        NotificationService.Told told = notifications.told(kit, disease);
        try {
            RecordAttempt command = form.command(told.item().timeZone());
            var violations = validator.validate(command);
            if (!violations.isEmpty()) {
                return show(422, told, form, null, "", Faults.of(violations));
            }
            notifications.record(kit, disease, form.id(), command);
            return Response.seeOther(URI.create("/notifications/" + told.item().kit() + "/" + disease))
                    .build();
        } catch (DomainException refusal) {
            return show(refusal.status(), told, form, null, "", Faults.of(refusal));
        }
    }

    /** Shows the contact once, after its reader has said why. */
    @POST
    @Path("{kit}/{disease}/contact")
    @PermissionsAllowed(Act.NOTIFY)
    public Response contact(
            @PathParam("kit") String kit, @PathParam("disease") String disease, @RestForm String purpose) {
        NotificationService.Told told = notifications.told(kit, disease);
        String why = purpose == null ? "" : purpose.strip();
        try {
            if (why.isEmpty() || why.length() > 200) {
                throw InvalidInput.field("purpose", "REQUIRED", "Say in a few words why you read the contact");
            }
            return show(
                    200,
                    told,
                    fresh(told),
                    contacts.read(told.item().kit(), why).contact(),
                    why,
                    Faults.NONE);
        } catch (DomainException refusal) {
            return show(refusal.status(), told, fresh(told), null, why, Faults.of(refusal));
        }
    }

    /** Makes the letter; making it reads the contact. */
    @POST
    @Path("{kit}/{disease}/letter")
    @PermissionsAllowed(Act.NOTIFY)
    public Response letter(@PathParam("kit") String kit, @PathParam("disease") String disease) {
        try {
            return NotificationsResource.pdf(letters.letter(kit, disease, "letter"));
        } catch (DomainException refusal) {
            NotificationService.Told told = notifications.told(kit, disease);
            return show(refusal.status(), told, fresh(told), null, "", Faults.of(refusal));
        }
    }

    private AttemptForm fresh(NotificationService.Told told) {
        String now = MINUTE.format(
                ZonedDateTime.ofInstant(clock.instant(), ZoneId.of(told.item().timeZone())));
        return new AttemptForm(null, told.item().outcome(), "", "", now, "");
    }

    private static Response show(
            int status,
            NotificationService.Told told,
            AttemptForm form,
            Contact contact,
            String purpose,
            Faults faults) {
        return Reply.page(
                status,
                Templates.notification(
                        told, form, AttemptForm.CHANNELS, AttemptForm.RESULTS, contact, purpose, faults));
    }
}
