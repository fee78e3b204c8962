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
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.dentary.plan.LaboratoryView;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.jboss.resteasy.reactive.RestForm;

/** How the laboratories' own files read, typed as pairs. */
@Path("/column-maps")
@Produces(MediaType.TEXT_HTML)
public class ColumnMapPages {
    private final ColumnMapService maps;
    private final PlanService plan;

    ColumnMapPages(ColumnMapService maps, PlanService plan) {
        this.maps = maps;
        this.plan = plan;
    }

    /** A map as it is typed. */
    public record Form(String laboratory, String columns, String fixed, String dateFormat, String words) {
        static final Form EMPTY = new Form("", "", "", "", "");

        static Form of(ColumnMaps.Edition edition) {
            ColumnMap map = edition.map();
            return new Form(
                    edition.laboratory(),
                    ColumnMapText.lines(map.columns()),
                    ColumnMapText.lines(map.fixed()),
                    map.dateFormat() == null ? "" : map.dateFormat(),
                    ColumnMapText.words(map));
        }
    }

    @CheckedTemplate(basePath = "result/mapping")
    static class Templates {
        static native TemplateInstance columnMaps(
                List<ColumnMaps.Edition> editions, List<LaboratoryView> laboratories, Form form, Faults faults);
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

    /** One edition: a column, a fixed value, the form of days or a word a line. */
    @GET
    @Path("{laboratory}/{edition}.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.RESULT_READ)
    public Response csv(@PathParam("laboratory") String laboratory, @PathParam("edition") int edition) {
        ColumnMap map = maps.all().stream()
                .filter(one -> one.laboratory().equals(laboratory) && one.edition() == edition)
                .findFirst()
                .orElseThrow(() -> new NotFound(
                        "EDITION_UNKNOWN", "No column map of " + laboratory + " has the edition " + edition))
                .map();
        List<Object[]> rows = new ArrayList<>();
        new TreeMap<>(map.columns()).forEach((theirs, ours) -> rows.add(new Object[] {"column", ours, theirs, ""}));
        new TreeMap<>(map.fixed()).forEach((ours, value) -> rows.add(new Object[] {"fixed", ours, "", value}));
        if (map.dateFormat() != null) {
            rows.add(new Object[] {"days", "", map.dateFormat(), ""});
        }
        new TreeMap<>(map.words())
                .forEach((column, words) -> new TreeMap<>(words)
                        .forEach((theirs, ours) -> rows.add(new Object[] {"word", column, theirs, ours})));
        return Reply.csv("columns.csv", List.of("what", "column", "theirs", "ours"), rows);
    }

    @POST
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response keep(
            @RestForm String laboratory,
            @RestForm String columns,
            @RestForm String fixed,
            @RestForm String dateFormat,
            @RestForm String words) {
        Form form = new Form(text(laboratory), text(columns), text(fixed), text(dateFormat), text(words));
        try {
            ColumnMap map = ColumnMapText.read(columns, fixed, dateFormat, words);
            if (map.columns().isEmpty()) {
                throw InvalidInput.field(
                        "columns", "REQUIRED", "Name the laboratory's columns and ours, one pair a line");
            }
            maps.keep(form.laboratory(), maps.next(form.laboratory()), map);
            return Response.seeOther(URI.create("/column-maps")).build();
        } catch (DomainException refusal) {
            return show(refusal.status() == 404 ? 422 : refusal.status(), form, Faults.of(refusal));
        }
    }

    private Response show(int status, Form form, Faults faults) {
        return Reply.answer(status, Templates.columnMaps(maps.all(), plan.laboratories(), form, faults));
    }

    private static String text(String typed) {
        return typed == null ? "" : typed;
    }
}
