package org.dentary.result.mapping;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.dentary.plan.LaboratoryView;
import org.dentary.plan.PlanService;
import org.dentary.platform.CalendarText;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.jboss.resteasy.reactive.RestForm;

/** What the laboratories' HL7 codes mean, typed as pairs. */
@Path("/code-maps")
@Produces(MediaType.TEXT_HTML)
public class CodeMapPages {
    private final CodeMapService maps;
    private final PlanService plan;

    CodeMapPages(CodeMapService maps, PlanService plan) {
        this.maps = maps;
        this.plan = plan;
    }

    /** A map as it is typed: {@code OBX-5: 260415000^SCT = NOT_DETECTED} a line. */
    public record Form(String laboratory, String inForceFrom, String codes) {
        static final Form EMPTY = new Form("", "", "");

        static Form of(CodeMaps.Edition edition) {
            List<String> lines = new ArrayList<>();
            new TreeMap<>(edition.map().codes())
                    .forEach((field, codes) -> new TreeMap<>(codes)
                            .forEach((theirs, ours) -> lines.add(field + ": " + theirs + " = " + ours)));
            return new Form(edition.laboratory(), edition.map().inForceFrom().toString(), String.join("\n", lines));
        }
    }

    @CheckedTemplate(basePath = "result/mapping")
    static class Templates {
        static native TemplateInstance codeMaps(
                List<CodeMaps.Edition> editions, List<LaboratoryView> laboratories, Form form, Faults faults);

        static native TemplateInstance codeMap(CodeMaps.Edition edition, List<Code> codes);
    }

    @GET
    @PermissionsAllowed(Act.RESULT_READ)
    public Response look(@QueryParam("laboratory") String laboratory) {
        Form form = maps.all().stream()
                .filter(one -> one.laboratory().equals(laboratory))
                .findFirst()
                .map(Form::of)
                .orElse(Form.EMPTY);
        return show(200, form, Faults.NONE);
    }

    /** One code of an edition and our word. */
    public record Code(String field, String code, String system, String ours) {}

    /** The codes of one edition. */
    @GET
    @Path("{laboratory}/{edition}")
    @PermissionsAllowed(Act.RESULT_READ)
    public Response edition(@PathParam("laboratory") String laboratory, @PathParam("edition") int edition) {
        CodeMaps.Edition one = find(laboratory, edition);
        return Reply.page(200, Templates.codeMap(one, codes(one)));
    }

    /** The same, as the set-up list takes it back under the number of the next edition. */
    @GET
    @Path("{laboratory}/{edition}.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.RESULT_READ)
    public Response csv(@PathParam("laboratory") String laboratory, @PathParam("edition") int edition) {
        CodeMaps.Edition one = find(laboratory, edition);
        return Reply.csv(
                "code-map-" + laboratory + "-" + edition + ".csv",
                List.of("laboratory", "edition", "in_force_from", "field", "code", "system", "ours"),
                codes(one).stream()
                        .map(c -> new Object[] {
                            laboratory, edition, one.map().inForceFrom(), c.field(), c.code(), c.system(), c.ours()
                        })
                        .toList());
    }

    private CodeMaps.Edition find(String laboratory, int edition) {
        return maps.all().stream()
                .filter(one -> one.laboratory().equals(laboratory) && one.edition() == edition)
                .findFirst()
                .orElseThrow(() -> new NotFound(
                        "EDITION_UNKNOWN", "No code map of " + laboratory + " has the edition " + edition));
    }

    private static List<Code> codes(CodeMaps.Edition edition) {
        List<Code> rows = new ArrayList<>();
        new TreeMap<>(edition.map().codes())
                .forEach((field, codes) -> new TreeMap<>(codes).forEach((theirs, ours) -> {
                    String[] parts = theirs.split("\\^", 2);
                    rows.add(new Code(field, parts[0], parts.length > 1 ? parts[1] : "", ours));
                }));
        return rows;
    }

    @POST
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response keep(@RestForm String laboratory, @RestForm String inForceFrom, @RestForm String codes) {
        Form form = new Form(text(laboratory), text(inForceFrom), text(codes));
        try {
            CodeMap map = new CodeMap(
                    day(inForceFrom), ColumnMapText.read("", "", "", codes).words());
            if (map.codes().isEmpty()) {
                throw InvalidInput.field(
                        "codes", "REQUIRED", "Enter the laboratory's codes, one a line: field: theirs = ours");
            }
            maps.keep(form.laboratory(), maps.next(form.laboratory()), map);
            return Response.seeOther(URI.create("/code-maps")).build();
        } catch (DomainException refusal) {
            return show(refusal.status() == 404 ? 422 : refusal.status(), form, Faults.of(refusal));
        }
    }

    private static LocalDate day(String typed) {
        try {
            return CalendarText.day(text(typed).strip());
        } catch (DateTimeParseException e) {
            throw InvalidInput.field(
                    "inForceFrom", "NOT_A_DATE", "'" + text(typed) + "' is not a day; write it as 2026-12-03");
        }
    }

    private Response show(int status, Form form, Faults faults) {
        return Reply.page(status, Templates.codeMaps(maps.all(), plan.laboratories(), form, faults));
    }

    private static String text(String typed) {
        return typed == null ? "" : typed;
    }
}
