package org.dentary.custody.event;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.desk.DeskReading;
import org.dentary.custody.desk.FormChecks;
import org.dentary.custody.desk.HandOverForm;
import org.dentary.custody.evidence.PhotoForms;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** Temperatures, tamper seals, losses, corrections: what happens to tissue between two hand-overs. */
@Path("/custody")
@Produces(MediaType.TEXT_HTML)
public class EventPages {
    private static final List<CustodyKind> KINDS = CustodyKind.byHand().stream()
            .filter(kind -> kind != CustodyKind.CORRECTED)
            .toList();
    private static final List<String> CONDITIONS =
            Arrays.stream(RecordCustodyEvent.Condition.values()).map(Enum::name).toList();

    private final CustodyEventService events;
    private final PhotoForms photos;
    private final DeskReading desks;
    private final FormChecks checks;
    private final Clock clock;

    EventPages(CustodyEventService events, PhotoForms photos, DeskReading desks, FormChecks checks, Clock clock) {
        this.events = events;
        this.photos = photos;
        this.desks = desks;
        this.checks = checks;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "custody")
    static class Templates {
        static native TemplateInstance event(
                List<CustodyKind> kinds,
                List<String> conditions,
                List<String> zones,
                EventForm form,
                RecordedAct done,
                Faults faults);
    }

    @GET
    @Path("events")
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    public TemplateInstance page(
            @QueryParam("codes") String codes,
            @QueryParam("kind") String kind,
            @QueryParam("corrects") String corrects,
            @QueryParam("done") String done) {
        return page(EventForm.fresh(codes, kind, corrects), done(done), Faults.NONE);
    }

    @POST
    @Path("events")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    public Response record(@BeanParam EventForm form, @RestForm("photo") FileUpload photo) {
        try {
            UUID id = form.id();
            form.photos = photos.keep(id, form.photos, photo).stream()
                    .map(UUID::toString)
                    .toList();
            RecordCustodyEvent command =
                    checks.checked(form.command(clock.instant().atOffset(ZoneOffset.UTC)));
            events.recordForm(id, command, HandOverForm.said(form.occurredAt) != null);
            return Response.seeOther(URI.create("/custody/events?done=" + id)).build();
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(page(
                            form, null, FormChecks.shown(fault, desks.zones().get(0))))
                    .build();
        }
    }

    private TemplateInstance page(EventForm form, RecordedAct done, Faults faults) {
        return Templates.event(KINDS, CONDITIONS, desks.zones(), form, done, faults);
    }

    private RecordedAct done(String id) {
        try {
            return id == null ? null : events.find(UUID.fromString(id)).orElse(null);
        } catch (IllegalArgumentException fault) {
            return null;
        }
    }
}
