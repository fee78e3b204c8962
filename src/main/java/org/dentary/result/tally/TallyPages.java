package org.dentary.result.tally;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.dentary.plan.LaboratoryView;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.InvalidInput;

/** What a laboratory's invoice is held against. */
@Path("/results/tests")
@Produces(MediaType.TEXT_HTML)
public class TallyPages {
    private final TallyService tally;
    private final PlanService plan;

    TallyPages(TallyService tally, PlanService plan) {
        this.tally = tally;
        this.plan = plan;
    }

    @CheckedTemplate(basePath = "result/tally")
    static class Templates {
        static native TemplateInstance tests(
                TallyService.Asked asked,
                List<TestCount> counts,
                long all,
                List<LaboratoryView> laboratories,
                Faults faults);
    }

    @GET
    @PermissionsAllowed(Act.RESULT_READ)
    public Response tests(
            @QueryParam("laboratory") String laboratory, @QueryParam("from") String from, @QueryParam("to") String to) {
        try {
            return show(200, tally.asked(laboratory, from, to), Faults.NONE);
        } catch (InvalidInput refusal) {
            return show(422, tally.asked(null, null, null), Faults.of(refusal));
        }
    }

    private Response show(int status, TallyService.Asked asked, Faults faults) {
        List<TestCount> counts = tally.counts(asked);
        return Response.status(status)
                .entity(Templates.tests(
                        asked,
                        counts,
                        counts.stream().mapToLong(TestCount::tests).sum(),
                        plan.laboratories(),
                        faults))
                .header(HttpHeaders.CACHE_CONTROL, "private, no-store")
                .build();
    }
}
