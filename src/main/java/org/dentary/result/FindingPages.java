package org.dentary.result;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Validator;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.dentary.plan.LaboratoryView;
import org.dentary.plan.PlanService;
import org.dentary.plan.TestMethodView;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.request.Reply;

/** A finding by hand, for the one report that came by mail or telephone. */
@Path("/results/findings/new")
@Produces(MediaType.TEXT_HTML)
public class FindingPages {
    private final FindingService findings;
    private final PlanService plan;
    private final Validator validator;

    FindingPages(FindingService findings, PlanService plan, Validator validator) {
        this.findings = findings;
        this.plan = plan;
        this.validator = validator;
    }

    @CheckedTemplate(basePath = "result")
    static class Templates {
        static native TemplateInstance finding(
                FindingForm form,
                List<LaboratoryView> laboratories,
                List<TestMethodView> methods,
                List<FindingForm.Choice> stages,
                List<FindingForm.Choice> words,
                List<FindingForm.Choice> statuses,
                List<FindingForm.Choice> reasons,
                FindingView recorded,
                Faults faults);
    }

    @GET
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response empty(
            @QueryParam("specimen") String specimen,
            @QueryParam("corrects") UUID corrects,
            @QueryParam("recorded") UUID recorded) {
        FindingForm form = corrects != null
                ? FindingForm.correcting(findings.finding(corrects))
                : FindingForm.empty(specimen == null ? "" : specimen);
        return show(200, form, recorded == null ? null : findings.finding(recorded), Faults.NONE);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response record(MultivaluedMap<String, String> typed) {
        FindingForm form = FindingForm.of(typed);
        try {
            UUID id = form.key();
            RecordFinding command = form.command();
            var violations = validator.validate(command);
            if (!violations.isEmpty()) {
                return show(422, form, null, Faults.of(violations));
            }
            findings.put(id, command);
            return Response.seeOther(URI.create("/results/findings/new?recorded=" + id))
                    .build();
        } catch (DomainException refusal) {
            return show(refusal.status() == 404 ? 422 : refusal.status(), form, null, Faults.of(refusal));
        }
    }

    private Response show(int status, FindingForm form, FindingView recorded, Faults faults) {
        return Reply.page(
                status,
                Templates.finding(
                        form,
                        plan.laboratories(),
                        plan.methods(),
                        FindingForm.choices(Stage.values()),
                        FindingForm.choices(FindingWord.values()),
                        FindingForm.choices(FindingStatus.values()),
                        FindingForm.choices(FindingReason.values()),
                        recorded,
                        faults));
    }
}
