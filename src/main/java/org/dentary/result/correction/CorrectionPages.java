package org.dentary.result.correction;

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
import java.time.Clock;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.CalendarText;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.Page;
import org.dentary.platform.table.StreamedCsv;
import org.dentary.result.notification.Channel;
import org.jboss.resteasy.reactive.RestForm;

/** Corrections as pages: what is to be told to whom, and a try. */
@Path("/corrections")
@Produces(MediaType.TEXT_HTML)
public class CorrectionPages {
    private static final int SHOWN = 100;
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm");

    private final CorrectionService corrections;
    private final Validator validator;
    private final StreamedCsv files;
    private final Clock clock;

    CorrectionPages(CorrectionService corrections, Validator validator, StreamedCsv files, Clock clock) {
        this.corrections = corrections;
        this.validator = validator;
        this.files = files;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "result/correction")
    static class Templates {
        static native TemplateInstance corrections(List<CorrectionView.Head> items, String state, String nextHref);

        static native TemplateInstance correction(
                CorrectionView correction, String key, Long tried, String at, String note, Faults faults);
    }

    @GET
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response list(@QueryParam("state") @DefaultValue("OPEN") String state, @QueryParam("before") Long before) {
        Page<CorrectionView.Head> page = Page.of(corrections.list(of(state), before, SHOWN + 1), SHOWN);
        Long next = page.next(CorrectionView.Head::id);
        return Reply.page(
                200,
                Templates.corrections(
                        page.items(), state, next == null ? null : "/corrections?state=" + state + "&before=" + next));
    }

    @GET
    @Path("list.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response csv(@QueryParam("state") @DefaultValue("ALL") String state) {
        return files.<CorrectionView.Head>file(
                "corrections.csv",
                List.of("kit", "disease", "earlier", "word", "cause", "at", "station", "state", "recipients", "told"),
                corrections.all(of(state)),
                c -> new Object[] {
                    c.kit(),
                    c.disease(),
                    c.earlier(),
                    c.word(),
                    c.cause(),
                    c.at(),
                    c.station(),
                    c.state(),
                    c.people(),
                    c.told()
                });
    }

    @GET
    @Path("{id}/attempts.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response attempts(@PathParam("id") long id) {
        CorrectionView correction = corrections.correction(id);
        return Reply.csv(
                "tries.csv",
                List.of("recipient", "kind", "at", "channel", "result", "by", "note"),
                correction.recipients().stream()
                        .flatMap(one -> correction.triesFor(one.id()).stream().map(a -> new Object[] {
                            one.recipient(), one.kind(), a.at(), a.channel(), a.result(), a.by(), a.note()
                        }))
                        .toList());
    }

    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response one(@PathParam("id") long id) {
        CorrectionView correction = corrections.correction(id);
        return show(200, correction, null, now(correction), "", Faults.NONE);
    }

    @POST
    @Path("{id}/recipients/{recipient}")
    @PermissionsAllowed(Act.NOTIFY)
    public Response record(
            @PathParam("id") long id,
            @PathParam("recipient") long recipient,
            @RestForm String key,
            @RestForm String channel,
            @RestForm String result,
            @RestForm String at,
            @RestForm String note) {
        CorrectionView correction = corrections.correction(id);
        String words = note == null ? "" : note.strip();
        try {
            RecordTry command = new RecordTry(
                    choice(Channel.class, channel),
                    choice(RecordTry.Result.class, result),
                    moment(at, correction.head().timeZone()),
                    words.isEmpty() ? null : words);
            var violations = validator.validate(command);
            if (!violations.isEmpty()) {
                return show(422, correction, recipient, at, words, Faults.of(violations));
            }
            corrections.record(id, recipient, uuid(key), command);
            return Response.seeOther(URI.create("/corrections/" + id)).build();
        } catch (DomainException refusal) {
            return show(refusal.status(), correction, recipient, at, words, Faults.of(refusal));
        }
    }

    private Response show(int status, CorrectionView correction, Long tried, String at, String note, Faults faults) {
        return Reply.page(
                status,
                Templates.correction(
                        correction, UUID.randomUUID().toString(), tried, at == null ? "" : at, note, faults));
    }

    /** The page's word for every state. */
    private static String of(String state) {
        return state.equals("ALL") ? "" : state;
    }

    private String now(CorrectionView correction) {
        return MINUTE.format(ZonedDateTime.ofInstant(
                clock.instant(), ZoneId.of(correction.head().timeZone())));
    }

    private static UUID uuid(String key) {
        try {
            return UUID.fromString(key);
        } catch (IllegalArgumentException | NullPointerException e) {
            throw InvalidInput.field("key", "NOT_A_KEY", "The form was changed; open the page again");
        }
    }

    private static OffsetDateTime moment(String typed, String zone) {
        try {
            return CalendarText.local(typed == null ? "" : typed.strip())
                    .atZone(ZoneId.of(zone))
                    .toOffsetDateTime();
        } catch (DateTimeException e) {
            throw InvalidInput.field("at", "NOT_A_TIME", "Give day and time, such as 2026-11-25T14:30");
        }
    }

    private static <E extends Enum<E>> E choice(Class<E> type, String code) {
        return Arrays.stream(type.getEnumConstants())
                .filter(one -> one.name().equals(code))
                .findFirst()
                .orElse(null);
    }
}
