package org.dentary.story.dossier;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.request.Reply;

/** Draws an audit sample on a page whose address draws the same again. */
@Path("/ledger")
@Produces(MediaType.TEXT_HTML)
public class AuditSamplePages {
    private final AuditSampleService samples;
    private final PlanService plan;

    AuditSamplePages(AuditSampleService samples, PlanService plan) {
        this.samples = samples;
        this.plan = plan;
    }

    /** What was typed; every field may be null. */
    record Typed(String season, String size, String seed) {}

    @CheckedTemplate(basePath = "dossier")
    static class Templates {
        static native TemplateInstance sample(
                List<SeasonView> seasons, Typed typed, AuditSample sample, List<AuditSample.Item> items, Faults faults);
    }

    @GET
    @Path("audit-sample")
    @PermissionsAllowed(Act.LEDGER_READ)
    public Response page(
            @QueryParam("season") String season, @QueryParam("size") String size, @QueryParam("seed") String seed) {
        Typed typed = new Typed(season, size == null ? "20" : size, seed);
        if (season == null) {
            return Response.ok(form(typed, Faults.NONE)).build();
        }
        try {
            AuditSample sample = samples.draw(season, size, seed);
            if (seed == null || seed.isBlank()) {
                return Response.seeOther(URI.create("/ledger/audit-sample?" + sample.query()))
                        .build();
            }
            return Reply.ok(Templates.sample(plan.seasons(), typed, sample, samples.items(sample), Faults.NONE));
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(form(typed, Faults.of(fault)))
                    .build();
        }
    }

    private TemplateInstance form(Typed typed, Faults faults) {
        return Templates.sample(plan.seasons(), typed, null, List.of(), faults);
    }
}
