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
import jakarta.ws.rs.core.UriBuilder;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.dentary.cautions.CautionService;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.season.SeasonStateService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.SettingRow;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.setup.SetUpImportService;
import org.dentary.setup.list.SetUpList;
import org.jboss.resteasy.reactive.RestQuery;

/** The coordinator's page: what is still to do, seasons and their states, the lists. */
@Path("/season")
@Produces(MediaType.TEXT_HTML)
public class SeasonPages {
    private static final String OPEN = "OPEN";

    private final PlanService plan;
    private final SeasonStateService states;
    private final CautionService cautions;
    private final SetUpImportService imports;
    private final CurrentAccount current;

    SeasonPages(
            PlanService plan,
            SeasonStateService states,
            CautionService cautions,
            SetUpImportService imports,
            CurrentAccount current) {
        this.plan = plan;
        this.states = states;
        this.cautions = cautions;
        this.imports = imports;
        this.current = current;
    }

    @CheckedTemplate(basePath = "setup")
    static class Templates {
        static native TemplateInstance season(SeasonPage page);
    }

    /**
     * The page.
     *
     * @param changed the season that was opened or closed just now
     */
    @GET
    @PermissionsAllowed(Act.SET_UP)
    public TemplateInstance season(@RestQuery String changed) {
        return page(changed, List.of());
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

    private Response change(Supplier<SeasonView> deed) {
        try {
            return Response.seeOther(UriBuilder.fromPath("/season")
                            .queryParam("changed", deed.get().code())
                            .build())
                    .build();
        } catch (DomainException refusal) {
            return Response.status(refusal.status())
                    .entity(page(null, List.of(new FieldProblem("", refusal.code(), refusal.getMessage()))))
                    .build();
        }
    }

    private TemplateInstance page(String changed, List<FieldProblem> faults) {
        List<SeasonView> seasons = plan.seasons();
        Map<SetUpList, Integer> counts = imports.counts();
        boolean open = seasons.stream().anyMatch(season -> season.state().equals(OPEN));
        return Templates.season(new SeasonPage(
                seasons,
                states.missing(),
                open ? null : first(counts),
                seasons.stream()
                        .filter(season -> season.code().equals(changed))
                        .findFirst()
                        .orElse(null),
                SeasonPage.ListRow.of(counts),
                PlanSetting.values().length,
                plan.settingRows().stream().map(SettingRow::name).distinct().count(),
                new Faults(faults)));
    }

    private FirstSeason first(Map<SetUpList, Integer> counts) {
        return FirstSeason.of(
                counts,
                current.get().person() != null,
                !plan.settings().everywhere(PlanSetting.PROTOCOL_TEXT).isBlank(),
                states.protocolReviewed(),
                cautions.unreviewed().size());
    }
}
