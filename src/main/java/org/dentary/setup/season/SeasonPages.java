package org.dentary.setup.season;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.dentary.plan.PlanService;
import org.dentary.plan.season.SeasonStateService;
import org.dentary.plan.setting.SettingService;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.setup.SetUpImportService;
import org.jboss.resteasy.reactive.RestForm;

/** The coordinator's page: seasons and their states, the lists, the plan's settings. */
@Path("/season")
@Produces(MediaType.TEXT_HTML)
public class SeasonPages {
    private final PlanService plan;
    private final SeasonStateService states;
    private final SettingService settings;
    private final SetUpImportService imports;

    SeasonPages(PlanService plan, SeasonStateService states, SettingService settings, SetUpImportService imports) {
        this.plan = plan;
        this.states = states;
        this.settings = settings;
        this.imports = imports;
    }

    @CheckedTemplate(basePath = "setup")
    static class Templates {
        static native TemplateInstance season(SeasonPage page);
    }

    @GET
    @PermissionsAllowed(Act.SET_UP)
    public TemplateInstance season() {
        return page(SeasonForm.BLANK, List.of());
    }

    @POST
    @Path("settings")
    @PermissionsAllowed(Act.SET_UP)
    public Response put(
            @RestForm String setting,
            @RestForm String value,
            @RestForm String season,
            @RestForm String region,
            @RestForm String unit) {
        SeasonForm form = new SeasonForm(setting, value, season, region, unit);
        List<FieldProblem> faults = form.faults();
        if (!faults.isEmpty()) {
            return Response.status(422).entity(page(form, faults)).build();
        }
        settings.put(
                form.chosen().orElseThrow(),
                form.value(),
                SeasonForm.scope(form.season()),
                SeasonForm.scope(form.region()),
                SeasonForm.scope(form.unit()));
        return Response.seeOther(URI.create("/season")).build();
    }

    @POST
    @Path("seasons/{code}/opening")
    @PermissionsAllowed(Act.SET_UP)
    public Response open(@PathParam("code") String code) {
        return change(() -> states.open(code));
    }

    @POST
    @Path("seasons/{code}/closing")
    @PermissionsAllowed(Act.SET_UP)
    public Response close(@PathParam("code") String code) {
        return change(() -> states.close(code));
    }

    private Response change(Runnable deed) {
        try {
            deed.run();
            return Response.seeOther(URI.create("/season")).build();
        } catch (DomainException refusal) {
            return Response.status(refusal.status())
                    .entity(page(SeasonForm.BLANK, List.of(new FieldProblem("", refusal.code(), refusal.getMessage()))))
                    .build();
        }
    }

    private TemplateInstance page(SeasonForm form, List<FieldProblem> faults) {
        return Templates.season(new SeasonPage(
                plan.seasons(),
                states.missing(),
                SeasonPage.ListRow.of(imports.counts()),
                SeasonPage.SettingLine.of(plan.settingRows()),
                plan.regions(),
                plan.units(),
                form,
                new Faults(faults)));
    }
}
