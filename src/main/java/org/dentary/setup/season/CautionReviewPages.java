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
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.function.Supplier;
import org.dentary.cautions.CautionService;
import org.dentary.cautions.CautionView;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.plan.season.SeasonStateService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.SettingService;
import org.dentary.platform.CalendarText;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.jboss.resteasy.reactive.RestForm;

/** Reviewing the protocol and the cautions: one text at a time, by a named person. */
@Path("/season/review")
@Produces(MediaType.TEXT_HTML)
public class CautionReviewPages {
    private final CautionService cautions;
    private final SettingService settings;
    private final SeasonStateService states;
    private final PlanService plan;
    private final PeopleService people;
    private final CurrentAccount current;
    private final PlanClock clock;

    CautionReviewPages(
            CautionService cautions,
            SettingService settings,
            SeasonStateService states,
            PlanService plan,
            PeopleService people,
            CurrentAccount current,
            PlanClock clock) {
        this.cautions = cautions;
        this.settings = settings;
        this.states = states;
        this.plan = plan;
        this.people = people;
        this.current = current;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "setup")
    static class Templates {
        static native TemplateInstance review(
                List<CautionView> cautions,
                String protocolVersion,
                List<String> protocol,
                boolean protocolReviewed,
                LocalDate nextYear,
                boolean named,
                int left,
                String next,
                Faults faults);
    }

    @GET
    @PermissionsAllowed(Act.SET_UP)
    public TemplateInstance review() {
        return page(Faults.NONE);
    }

    @POST
    @Path("cautions/{code}/{version}")
    @PermissionsAllowed(Act.SET_UP)
    public Response caution(
            @PathParam("code") String code, @PathParam("version") String version, @RestForm String reviewBy) {
        return change(() -> {
            cautions.review(code, version, reviewer(), clock.today(), day(reviewBy));
            return next(cautions.inForce());
        });
    }

    @POST
    @Path("protocol")
    @PermissionsAllowed(Act.SET_UP)
    public Response protocol(@RestForm String version) {
        return change(() -> {
            if (!people.protocolVersion().equals(version)) {
                throw new RuleBroken("PROTOCOL_CHANGED", "The protocol changed while you read it; read it again");
            }
            settings.reviewProtocol(reviewer(), clock.today());
            return next(cautions.inForce());
        });
    }

    /** Does a deed and shows the text that its answer names. */
    private Response change(Supplier<String> deed) {
        try {
            String next = deed.get();
            return Response.seeOther(UriBuilder.fromPath("/season/review")
                            .fragment(next.isEmpty() ? null : next)
                            .build())
                    .build();
        } catch (DomainException refusal) {
            return Response.status(refusal.status())
                    .entity(page(Faults.of(refusal)))
                    .build();
        }
    }

    private TemplateInstance page(Faults faults) {
        List<CautionView> all = cautions.inForce();
        return Templates.review(
                all,
                people.protocolVersion(),
                plan.settings().everywhere(PlanSetting.PROTOCOL_TEXT).lines().toList(),
                states.protocolReviewed(),
                clock.today().plusYears(1),
                current.get().person() != null,
                (int) all.stream().filter(CautionReviewPages::waits).count(),
                next(all),
                faults);
    }

    private static boolean waits(CautionView caution) {
        return !caution.reviewed() || caution.overdue();
    }

    /** The code of the first caution that waits for a review, or nothing. */
    private static String next(List<CautionView> all) {
        return all.stream()
                .filter(CautionReviewPages::waits)
                .map(CautionView::code)
                .findFirst()
                .orElse("");
    }

    private String reviewer() {
        Account account = current.get();
        if (account.person() == null) {
            throw new RuleBroken(
                    "REVIEWER_UNNAMED",
                    "A review names a person, and " + account.username() + " is a device; sign in as yourself");
        }
        return account.person();
    }

    private static LocalDate day(String given) {
        try {
            return CalendarText.day(given == null ? "" : given.strip());
        } catch (DateTimeParseException e) {
            throw InvalidInput.field(
                    "reviewBy", "INVALID_VALUE", "'" + given + "' is no date; give one such as 2027-05-31");
        }
    }
}
