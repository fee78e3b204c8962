package org.dentary.result.notification.caller;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Validator;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Arrays;
import java.util.List;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.request.Reply;
import org.jboss.resteasy.reactive.RestForm;

/** Somebody calls and has no stub. */
@Path("/notifications")
@Produces(MediaType.TEXT_HTML)
public class CallerPages {
    private final CallerService callers;
    private final Validator validator;

    CallerPages(CallerService callers, Validator validator) {
        this.callers = callers;
        this.validator = validator;
    }

    @CheckedTemplate(basePath = "result/notification")
    static class Templates {
        static native TemplateInstance caller(
                String by, String value, String purpose, boolean searched, List<CallerMatch> matches, Faults faults);
    }

    @GET
    @Path("callers")
    @PermissionsAllowed(Act.NOTIFY)
    public Response form() {
        return Reply.page(200, Templates.caller("REGISTRATION", "", "", false, List.of(), Faults.NONE));
    }

    @POST
    @Path("callers")
    @PermissionsAllowed(Act.NOTIFY)
    public Response search(@RestForm String by, @RestForm String value, @RestForm String purpose) {
        CallerSearch search = new CallerSearch(
                Arrays.stream(CallerSearch.By.values())
                        .filter(one -> one.name().equals(by))
                        .findFirst()
                        .orElse(null),
                value,
                purpose);
        var violations = validator.validate(search);
        if (!violations.isEmpty()) {
            return show(422, search, false, List.of(), Faults.of(violations));
        }
        try {
            return show(200, search, true, callers.search(search), Faults.NONE);
        } catch (DomainException refusal) {
            return show(refusal.status(), search, false, List.of(), Faults.of(refusal));
        }
    }

    private static Response show(
            int status, CallerSearch search, boolean searched, List<CallerMatch> matches, Faults faults) {
        return Reply.page(
                status,
                Templates.caller(
                        search.by() == null ? "" : search.by().name(),
                        search.value() == null ? "" : search.value(),
                        search.purpose() == null ? "" : search.purpose(),
                        searched,
                        matches,
                        faults));
    }
}
