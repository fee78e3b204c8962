package org.dentary.result.tally;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.dentary.plan.LaboratoryView;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;

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
                Typed typed,
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
            TallyService.Asked asked = tally.asked(laboratory, from, to);
            return show(
                    200,
                    new Typed(
                            asked.laboratory(),
                            asked.from().toString(),
                            asked.to().toString()),
                    asked,
                    tally.counts(asked),
                    Faults.NONE);
        } catch (InvalidInput refusal) {
            return show(422, new Typed(laboratory, from, to), null, List.of(), Faults.of(refusal));
        }
    }

    private Response show(int status, Typed typed, TallyService.Asked asked, List<TestCount> counts, Faults faults) {
        return Reply.page(
                status,
                Templates.tests(
                        typed,
                        asked,
                        counts,
                        counts.stream().mapToLong(TestCount::tests).sum(),
                        plan.laboratories(),
                        faults));
    }

    /** The question as it was typed, or as it was filled up; a part may be null. */
    record Typed(String laboratory, String from, String to) {}
}
