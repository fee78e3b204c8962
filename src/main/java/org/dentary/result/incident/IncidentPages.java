package org.dentary.result.incident;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Validator;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.people.PeopleService;
import org.dentary.people.PersonView;
import org.dentary.platform.CalendarText;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.ETags;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.Page;
import org.dentary.platform.table.StreamedCsv;
import org.jboss.resteasy.reactive.RestForm;

/** First detections: what is to be done, by whom, and who is told when. */
@Path("/incidents")
@Produces(MediaType.TEXT_HTML)
public class IncidentPages {
    private static final int SHOWN = 50;
    private static final List<String> COLUMNS = List.of(
            "incident", "disease", "unit", "incidentState", "openedAt", "step", "owner", "dueOn", "state", "note");

    private final IncidentService incidents;
    private final PeopleService people;
    private final Validator validator;
    private final StreamedCsv files;

    IncidentPages(IncidentService incidents, PeopleService people, Validator validator, StreamedCsv files) {
        this.incidents = incidents;
        this.people = people;
        this.validator = validator;
        this.files = files;
    }

    @CheckedTemplate(basePath = "result/incident")
    static class Templates {
        static native TemplateInstance incidents(List<IncidentView.Head> incidents, String next);

        static native TemplateInstance incident(
                IncidentView incident, List<PersonView> persons, Typed typed, Faults faults);
    }

    @GET
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response all(@QueryParam("after") UUID after) {
        Page<IncidentView.Head> page = incidents.page(after, SHOWN);
        return Reply.page(200, Templates.incidents(page.items(), page.next(IncidentView.Head::id)));
    }

    @GET
    @Path("list.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response csv() {
        return files.<IncidentQueries.TableRow>file("incidents.csv", COLUMNS, incidents.table(), row -> new Object[] {
            row.incident(),
            row.disease(),
            row.unit(),
            row.incidentState(),
            row.openedAt(),
            row.step(),
            row.owner(),
            row.dueOn(),
            row.state(),
            row.note()
        });
    }

    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response one(@PathParam("id") UUID id) {
        return show(200, id, Typed.NOTHING, Faults.NONE);
    }

    @POST
    @Path("{id}/steps/{kind}")
    @PermissionsAllowed(Act.INCIDENT_WRITE)
    public Response settle(
            @PathParam("id") UUID id,
            @PathParam("kind") IncidentStep kind,
            @RestForm String owner,
            @RestForm String dueOn,
            @RestForm String state,
            @RestForm String note,
            @RestForm String version) {
        Typed typed = typed(kind.name(), "owner", owner, "dueOn", dueOn, "state", state, "note", note);
        return change(id, typed, () -> {
            SettleStep step = new SettleStep(
                    text(owner), day(dueOn), state(state), text(note).isEmpty() ? null : text(note));
            var violations = validator.validate(step);
            if (!violations.isEmpty()) {
                throw InvalidInput.of(Faults.of(violations).all());
            }
            incidents.settle(id, kind, step, version == null ? null : ETags.of(Integer.parseInt(version)));
        });
    }

    @POST
    @Path("{id}/tellings/{position}")
    @PermissionsAllowed(Act.INCIDENT_WRITE)
    public Response tell(
            @PathParam("id") UUID id, @PathParam("position") int position, @RestForm String at, @RestForm String note) {
        return change(id, typed(String.valueOf(position), "at", at, "note", note), () -> {
            String zone = incidents.incident(id).head().timeZone();
            incidents.tell(id, position, moment(at, zone), text(note).isEmpty() ? null : text(note));
        });
    }

    @POST
    @Path("{id}/closing")
    @PermissionsAllowed(Act.RELEASE)
    public Response close(@PathParam("id") UUID id, @RestForm String as, @RestForm String note) {
        return change(id, typed("closing", "as", as, "note", note), () -> {
            if (text(note).isEmpty()) {
                throw InvalidInput.field("closing", "REQUIRED", "Say in a sentence what was found");
            }
            incidents.close(id, "CONFIRMED".equals(as), text(note));
        });
    }

    private Response change(UUID id, Typed typed, Runnable deed) {
        try {
            deed.run();
            return Response.seeOther(URI.create("/incidents/" + id)).build();
        } catch (DomainException refusal) {
            return show(refusal.status(), id, typed, Faults.of(refusal));
        }
    }

    private Response show(int status, UUID id, Typed typed, Faults faults) {
        return Reply.page(status, Templates.incident(incidents.incident(id), people.persons(), typed, faults));
    }

    /** Fields and what was typed into them, in turn. */
    private static Typed typed(String form, String... pairs) {
        Map<String, String> fields = new HashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            fields.put(pairs[i], pairs[i + 1]);
        }
        return new Typed(form, fields);
    }

    private static SettleStep.State state(String typed) {
        return Arrays.stream(SettleStep.State.values())
                .filter(one -> one.name().equals(typed))
                .findFirst()
                .orElse(null);
    }

    private static LocalDate day(String typed) {
        try {
            return text(typed).isEmpty() ? null : CalendarText.day(text(typed));
        } catch (DateTimeException e) {
            throw InvalidInput.field("dueOn", "NOT_A_DATE", "Give the day as year, month, day, such as 2026-11-30");
        }
    }

    private static Instant moment(String typed, String zone) {
        try {
            return CalendarText.local(text(typed)).atZone(ZoneId.of(zone)).toInstant();
        } catch (DateTimeException e) {
            throw InvalidInput.field("at", "NOT_A_TIME", "Give day and time, such as 2026-11-25T14:30");
        }
    }

    private static String text(String typed) {
        return typed == null ? "" : typed.strip();
    }
}
