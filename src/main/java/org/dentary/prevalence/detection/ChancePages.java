package org.dentary.prevalence.detection;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import org.dentary.plan.PlanClock;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.DomainException;
import org.dentary.prevalence.question.QuestionForm;
import org.dentary.prevalence.question.QuestionForms;

/** The page of the chance of detection: the question as a form in the address, the answer as table and sentences. */
@Path("/chance-of-detection")
@PermissionsAllowed(Act.REPORT_READ)
public class ChancePages {
    private final ChanceService chances;
    private final ChanceAnswers answers;
    private final QuestionForms forms;
    private final PlanClock zone;

    ChancePages(ChanceService chances, ChanceAnswers answers, QuestionForms forms, PlanClock zone) {
        this.chances = chances;
        this.answers = answers;
        this.forms = forms;
        this.zone = zone;
    }

    @CheckedTemplate(basePath = "prevalence")
    static class Templates {
        static native TemplateInstance chanceOfDetection(QuestionForm form, ChanceTable table, String fault);
    }

    @GET
    @Produces(MediaType.TEXT_HTML)
    public Response page(@Context UriInfo address) {
        Map<String, List<String>> asked = forms.asked(address.getQueryParameters());
        QuestionForm form = forms.of(asked);
        if (!asked.containsKey("season")) {
            return Response.ok(Templates.chanceOfDetection(form, null, "No season is set up yet."))
                    .build();
        }
        try {
            ChanceTable table = ChanceTable.of(answers.of(chances.question(asked)), zone);
            return Response.ok(Templates.chanceOfDetection(form, table, null)).build();
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(Templates.chanceOfDetection(form, null, String.join(" ", messages(fault))))
                    .build();
        }
    }

    private static List<String> messages(DomainException fault) {
        return fault.errors().isEmpty()
                ? List.of(fault.getMessage())
                : fault.errors().stream().map(error -> error.message()).toList();
    }
}
