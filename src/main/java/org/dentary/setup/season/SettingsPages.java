package org.dentary.setup.season;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.SettingRow;
import org.dentary.plan.setting.SettingService;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.FieldProblem;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestQuery;

/** The plan's settings by subject, and a form that changes one. */
@Path("/season")
@Produces(MediaType.TEXT_HTML)
public class SettingsPages {
    private final PlanService plan;
    private final SettingService settings;

    SettingsPages(PlanService plan, SettingService settings) {
        this.plan = plan;
        this.settings = settings;
    }

    @CheckedTemplate(basePath = "setup")
    static class Templates {
        static native TemplateInstance settings(SettingsPage page);
    }

    /**
     * The settings.
     *
     * @param setting the one that the form shows, with what holds everywhere; any other text shows none
     * @param changed the one that was changed just now
     */
    @GET
    @Path("settings")
    @PermissionsAllowed(Act.SET_UP)
    public TemplateInstance settings(@RestQuery String setting, @RestQuery String changed) {
        List<SettingRow> rows = plan.settingRows();
        PlanSetting chosen = SettingsPage.named(setting);
        SeasonForm form = chosen == null
                ? SeasonForm.BLANK
                : new SeasonForm(setting, SettingsPage.Line.of(chosen, rows).everywhere(), null, null, null);
        return page(rows, form, changed, List.of());
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
            return Response.status(422)
                    .entity(page(plan.settingRows(), form, null, faults))
                    .build();
        }
        settings.put(
                form.chosen().orElseThrow(),
                form.value(),
                SeasonForm.scope(form.season()),
                SeasonForm.scope(form.region()),
                SeasonForm.scope(form.unit()));
        return Response.seeOther(URI.create("/season/settings?changed=" + form.setting()))
                .build();
    }

    private TemplateInstance page(List<SettingRow> rows, SeasonForm form, String changed, List<FieldProblem> faults) {
        return Templates.settings(new SettingsPage(
                SettingsPage.Subject.of(rows),
                plan.seasons(),
                plan.regions(),
                plan.units(),
                form,
                form.chosen().map(one -> SettingsPage.Line.of(one, rows)).orElse(null),
                SettingsPage.named(changed) == null ? null : SettingsPage.Line.of(SettingsPage.named(changed), rows),
                new Faults(faults)));
    }
}
