package org.dentary.prevalence.cut;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.question.Choice;
import org.jboss.resteasy.reactive.RestForm;

/** Data cuts as a page: make one, mark one superseded, compare two. */
@Path("/data-cuts")
@Produces(MediaType.TEXT_HTML)
public class DataCutPages {
    private final DataCutService cuts;
    private final PlanService plan;

    DataCutPages(DataCutService cuts, PlanService plan) {
        this.cuts = cuts;
        this.plan = plan;
    }

    @CheckedTemplate(basePath = "prevalence")
    static class Templates {
        static native TemplateInstance dataCuts(
                String season,
                List<Choice> seasons,
                List<DataCutView> cuts,
                DataCutChanges changes,
                String from,
                String to,
                String name,
                String fault);
    }

    @GET
    @PermissionsAllowed(Act.REPORT_READ)
    public Response page(
            @QueryParam("season") String season, @QueryParam("from") String from, @QueryParam("to") String to) {
        try {
            boolean compare = from != null && to != null && !from.isBlank() && !to.isBlank();
            return show(200, season, compare ? cuts.changes(id(from), id(to)) : null, from, to, "", null);
        } catch (DomainException fault) {
            return show(fault.status(), season, null, from, to, "", fault.getMessage());
        }
    }

    @POST
    @PermissionsAllowed(Act.DATA_CUT)
    public Response make(@RestForm String season, @RestForm String name) {
        try {
            if (name == null || name.isBlank()) {
                throw InvalidInput.field("name", "REQUIRED", "Give the cut a name that people will use");
            }
            cuts.put(UUID.randomUUID(), new MakeDataCut(season, name.trim(), null), null);
            return Response.seeOther(URI.create("/data-cuts?season=" + season)).build();
        } catch (DomainException fault) {
            return show(fault.status() == 409 ? 409 : 422, season, null, null, null, name, fault.getMessage());
        }
    }

    @POST
    @Path("superseding")
    @PermissionsAllowed(Act.DATA_CUT)
    public Response supersede(@RestForm String cut, @RestForm String reason) {
        DataCutView present = cuts.require(id(cut));
        try {
            if (reason == null || reason.isBlank()) {
                throw InvalidInput.field("reason", "REQUIRED", "Say why the cut should no longer be used");
            }
            cuts.put(
                    id(cut),
                    new MakeDataCut(present.season(), present.name(), reason.trim()),
                    org.dentary.platform.request.ETags.of(present.version()));
            return Response.seeOther(URI.create("/data-cuts?season=" + present.season()))
                    .build();
        } catch (DomainException fault) {
            return show(fault.status(), present.season(), null, null, null, "", fault.getMessage());
        }
    }

    private Response show(
            int status, String season, DataCutChanges changes, String from, String to, String name, String fault) {
        List<SeasonView> seasons = plan.seasons();
        String shown = season != null && !season.isBlank()
                ? season
                : seasons.isEmpty() ? null : seasons.get(seasons.size() - 1).code();
        return Response.status(status)
                .entity(Templates.dataCuts(
                        shown,
                        Choice.of(seasons, SeasonView::code, SeasonView::name, shown, null),
                        shown == null ? List.of() : cuts.all(shown),
                        changes,
                        from,
                        to,
                        name,
                        fault))
                .build();
    }

    private static UUID id(String given) {
        try {
            return UUID.fromString(given);
        } catch (IllegalArgumentException | NullPointerException e) {
            throw InvalidInput.field("cut", "NOT_A_UUID", "'" + given + "' is not the id of a data cut");
        }
    }
}
