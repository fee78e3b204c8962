package org.dentary.prevalence.ageing;

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
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.request.Reply;
import org.dentary.prevalence.question.Choice;
import org.dentary.prevalence.question.QuestionForms;

/** The page of the what-if: the question as a form in the address, the age pattern as read beside the one that would be. */
@Path("/prevalence")
public class AgeingPages {
    private static final Set<String> FIELDS = Set.of("season", "disease", "species", "cut", "unit", "matrix");

    private final AgeingAnswers answers;
    private final ErrorMatrixQueries matrices;
    private final QuestionForms forms;
    private final PlanService plan;
    private final PlanClock clocks;

    AgeingPages(
            AgeingAnswers answers,
            ErrorMatrixQueries matrices,
            QuestionForms forms,
            PlanService plan,
            PlanClock clocks) {
        this.answers = answers;
        this.matrices = matrices;
        this.forms = forms;
        this.plan = plan;
        this.clocks = clocks;
    }

    @CheckedTemplate(basePath = "prevalence")
    static class Templates {
        static native TemplateInstance ageingError(AgeingForm form, AgeingTable table, String query, String fault);
    }

    @GET
    @Path("ageing-error")
    @Produces(MediaType.TEXT_HTML)
    @PermissionsAllowed(Act.REPORT_READ)
    public Response page(@Context UriInfo address) {
        Map<String, List<String>> asked = forms.asked(address.getQueryParameters());
        List<ErrorMatrix> all = matrices.all();
        if (!asked.containsKey("matrix")) {
            asked.put(
                    "matrix",
                    List.of(all.isEmpty() ? ErrorMatrix.KNOWN_AGE : all.get(0).code()));
        }
        AgeingForm form = form(asked, all);
        if (!asked.containsKey("season")) {
            return Reply.page(200, Templates.ageingError(form, null, "", "No season is set up yet."));
        }
        try {
            AgeingAnswers.Answer answer = answers.of(asked);
            return Reply.page(200, Templates.ageingError(form, AgeingTable.of(answer, clocks), answer.query(), null));
        } catch (DomainException fault) {
            return Reply.page(fault.status(), Templates.ageingError(form, null, "", fault.getMessage()));
        }
    }

    private AgeingForm form(Map<String, List<String>> asked, List<ErrorMatrix> all) {
        List<Choice> units = new ArrayList<>();
        String unit = asked.containsKey("unit") ? asked.get("unit").get(0) : "";
        units.add(new Choice("", "All units", unit.isEmpty()));
        plan.units()
                .forEach(one ->
                        units.add(new Choice(one.code(), one.name(), one.code().equals(unit))));
        List<Choice> choices = new ArrayList<>();
        String matrix = asked.get("matrix").get(0);
        all.forEach(one -> choices.add(
                new Choice(one.code(), one.name() + ", " + one.day(), one.code().equals(matrix))));
        choices.add(
                new Choice(ErrorMatrix.KNOWN_AGE, "Jaws of known age read here", ErrorMatrix.KNOWN_AGE.equals(matrix)));
        List<AgeingForm.Kept> kept = new ArrayList<>();
        asked.forEach((name, values) -> values.stream()
                .filter(value -> !FIELDS.contains(name))
                .forEach(value -> kept.add(new AgeingForm.Kept(name, value))));
        return new AgeingForm(forms.of(asked), units, choices, kept);
    }
}
