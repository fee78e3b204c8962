package org.dentary.result.stub;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.plan.PlanService;
import org.dentary.plan.StationView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.platform.CalendarText;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.FieldProblem;
import org.jboss.resteasy.reactive.RestForm;

/** The page that a stub names: a code and a second fact, and what is released. Nobody signs in. */
@Path("/stub")
@Produces(MediaType.TEXT_HTML)
public class StubPages {
    private static final String NOTHING = "We have nothing under this code together with that day or station. Look at"
            + " both again; if they are right, call us.";
    private static final String TOO_OFTEN = "That was tried too often. Wait half an hour, or call us.";

    private final StubService stubs;
    private final PlanService plan;

    StubPages(StubService stubs, PlanService plan) {
        this.stubs = stubs;
        this.plan = plan;
    }

    /** Whom to call and what the health agency advises; empty text where the plan sets nothing. */
    public record Calls(
            String results, String resultsDial, String agency, String agencyPhone, String agencyDial, String advice) {
        static Calls of(PlanSettings settings) {
            String results = settings.everywhere(PlanSetting.RESULTS_NUMBER);
            String phone = settings.everywhere(PlanSetting.HEALTH_AGENCY_NUMBER);
            return new Calls(
                    results,
                    dial(results),
                    settings.everywhere(PlanSetting.HEALTH_AGENCY),
                    phone,
                    dial(phone),
                    settings.everywhere(PlanSetting.HEALTH_AGENCY_ADVICE));
        }

        private static String dial(String number) {
            return number.replaceAll("\\(.*", "").replaceAll("[^+0-9]", "");
        }
    }

    @CheckedTemplate(basePath = "result/stub")
    static class Templates {
        static native TemplateInstance stub(
                String code,
                String diedOn,
                String station,
                List<StationView> stations,
                List<StubService.Told> told,
                Calls calls,
                Faults faults);
    }

    @GET
    @PermitAll
    public Response form() {
        return show(200, "", "", "", List.of(), Faults.NONE);
    }

    @POST
    @PermitAll
    public Response look(
            @RestForm String code, @RestForm String diedOn, @RestForm String station, RoutingContext request) {
        String typed = text(code);
        String day = text(diedOn);
        String place = text(station);
        List<FieldProblem> faults = new ArrayList<>();
        LabelCode label = label(typed, faults);
        LocalDate died = day(day, faults);
        if (day.isEmpty() && place.isEmpty()) {
            faults.add(new FieldProblem("diedOn", "REQUIRED", "Give the day the deer died, or where you brought it"));
        }
        if (!faults.isEmpty()) {
            return show(422, typed, day, place, List.of(), new Faults(faults));
        }
        StubService.Answer answer =
                stubs.look(label, died, place, request.request().remoteAddress().host());
        if (answer.tooOften()) {
            return show(429, typed, day, place, List.of(), fault("TOO_OFTEN", TOO_OFTEN));
        }
        return answer.told().isEmpty()
                ? show(422, typed, day, place, List.of(), fault("NOTHING_FOUND", NOTHING))
                : show(200, typed, day, place, answer.told(), Faults.NONE);
    }

    private static LabelCode label(String typed, List<FieldProblem> faults) {
        try {
            return LabelCode.parse(typed);
        } catch (NotACode fault) {
            faults.add(new FieldProblem("code", "NOT_A_CODE", fault.getMessage()));
            return null;
        }
    }

    private static LocalDate day(String typed, List<FieldProblem> faults) {
        try {
            return typed.isEmpty() ? null : CalendarText.day(typed);
        } catch (DateTimeException e) {
            faults.add(
                    new FieldProblem("diedOn", "NOT_A_DATE", "Give the day as year, month, day, such as 2026-11-14"));
            return null;
        }
    }

    private Response show(
            int status, String code, String diedOn, String station, List<StubService.Told> told, Faults faults) {
        return Response.status(status)
                .entity(Templates.stub(code, diedOn, station, plan.stations(), told, Calls.of(plan.settings()), faults))
                .header("X-Robots-Tag", "noindex")
                .build();
    }

    private static Faults fault(String rule, String message) {
        return new Faults(List.of(new FieldProblem("", rule, message)));
    }

    private static String text(String typed) {
        return typed == null ? "" : typed.strip();
    }
}
