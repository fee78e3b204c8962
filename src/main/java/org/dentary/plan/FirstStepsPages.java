package org.dentary.plan;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.dentary.cautions.CautionService;
import org.dentary.cautions.CautionView;
import org.dentary.cautions.Hazard;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;

/** First steps after an accident, with the plan's numbers: without an account, and kept by the browser for bad days. */
@Path("/first-steps")
@Produces(MediaType.TEXT_HTML)
public class FirstStepsPages {
    private final PlanService plan;
    private final CautionService cautions;

    FirstStepsPages(PlanService plan, CautionService cautions) {
        this.plan = plan;
        this.cautions = cautions;
    }

    @CheckedTemplate(basePath = "plan")
    static class Templates {
        static native TemplateInstance firstSteps(List<Call> calls, List<CautionView> steps);
    }

    /** A number to call; {@code dial} is its digits for a telephone link, empty when none is set. */
    public record Call(String whom, String number, String dial) {
        static Call of(String whom, String number) {
            return new Call(whom, number, number.replaceAll("\\(.*", "").replaceAll("[^+0-9]", ""));
        }
    }

    @GET
    @PermitAll
    public Response firstSteps() {
        PlanSettings settings = plan.settings();
        List<Call> calls = List.of(
                Call.of("Emergency", settings.everywhere(PlanSetting.EMERGENCY_NUMBER)),
                Call.of("Poison center", settings.everywhere(PlanSetting.POISON_CENTER_NUMBER)),
                Call.of("Supervisor", settings.everywhere(PlanSetting.SUPERVISOR_NUMBER)));
        // Rendered before it leaves: the same page serves everybody, so a browser may keep it for when there is no
        // signal.
        return Response.ok(Templates.firstSteps(calls, cautions.at(Hazard.FIRST_STEPS)))
                .header("Cache-Control", "private, max-age=600, stale-while-revalidate=86400, stale-if-error=31536000")
                .build();
    }
}
