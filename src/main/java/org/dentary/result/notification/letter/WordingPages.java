package org.dentary.result.notification.letter;

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
import java.net.URI;
import java.util.List;
import java.util.Set;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.jboss.resteasy.reactive.RestForm;

/** What letters say: read, written anew, reviewed by another person. */
@Path("/notifications")
@Produces(MediaType.TEXT_HTML)
public class WordingPages {
    private static final int LONGEST = 4_000;

    private final WordingService wordings;

    WordingPages(WordingService wordings) {
        this.wordings = wordings;
    }

    @CheckedTemplate(basePath = "result/notification")
    static class Templates {
        static native TemplateInstance wordings(
                List<WordingView> wordings, Set<String> places, String outcome, String wording, Faults faults);
    }

    @GET
    @Path("wordings")
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response all() {
        return show(200, "", "", Faults.NONE);
    }

    @POST
    @Path("wordings")
    @PermissionsAllowed(Act.SET_UP)
    public Response write(@RestForm String outcome, @RestForm String wording) {
        String text = wording == null ? "" : wording.strip();
        try {
            if (text.isEmpty() || text.length() > LONGEST) {
                throw InvalidInput.field("wording", "REQUIRED", "Write what the letter says, at most 4,000 characters");
            }
            int next = wordings.all().stream()
                            .filter(one -> one.outcome().equals(outcome))
                            .mapToInt(WordingView::edition)
                            .max()
                            .orElse(0)
                    + 1;
            wordings.write(outcome, next, text.replace("\r\n", "\n"));
            return back();
        } catch (DomainException refusal) {
            return show(refusal.status(), outcome == null ? "" : outcome, text, Faults.of(refusal));
        }
    }

    @POST
    @Path("wordings/{outcome}/{edition}/review")
    @PermissionsAllowed(Act.SET_UP)
    public Response review(@PathParam("outcome") String outcome, @PathParam("edition") int edition) {
        try {
            wordings.review(outcome, edition);
            return back();
        } catch (DomainException refusal) {
            return show(refusal.status(), "", "", Faults.of(refusal));
        }
    }

    private static Response back() {
        return Response.seeOther(URI.create("/notifications/wordings")).build();
    }

    private Response show(int status, String outcome, String wording, Faults faults) {
        return Reply.page(status, Templates.wordings(wordings.all(), WordingRules.PLACES, outcome, wording, faults));
    }
}
