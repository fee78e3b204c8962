package org.dentary.prevalence.saved;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.ETags;
import org.dentary.prevalence.cut.DataCutService;
import org.dentary.prevalence.cut.DataCutView;
import org.jboss.resteasy.reactive.RestForm;

/** Saved questions as a page: keep one, ask one again of a cut, withdraw one. */
@Path("/saved-questions")
@Produces(MediaType.TEXT_HTML)
public class SavedQuestionPages {
    private final SavedQuestionService questions;
    private final DataCutService cuts;

    SavedQuestionPages(SavedQuestionService questions, DataCutService cuts) {
        this.questions = questions;
        this.cuts = cuts;
    }

    @CheckedTemplate(basePath = "prevalence")
    static class Templates {
        static native TemplateInstance savedQuestions(
                List<SavedQuestionView> questions, List<DataCutView> cuts, String name, String query, String fault);
    }

    @GET
    @PermissionsAllowed(Act.REPORT_READ)
    public Response page() {
        return show(200, "", "", null);
    }

    @POST
    @PermissionsAllowed(Act.DATA_CUT)
    public Response keep(@RestForm String name, @RestForm String query) {
        try {
            if (name == null || name.isBlank()) {
                throw InvalidInput.field("name", "REQUIRED", "Give the question a name that people will use");
            }
            questions.put(UUID.randomUUID(), new SaveQuestion(name.trim(), query == null ? "" : query, null), null);
            return Response.seeOther(URI.create("/saved-questions")).build();
        } catch (DomainException fault) {
            return show(fault.status(), name, query, fault.getMessage());
        }
    }

    /** Asks a question again: the answer has the prevalence page's own address. */
    @GET
    @Path("{id}/answer")
    @PermissionsAllowed(Act.REPORT_READ)
    public Response answer(@PathParam("id") UUID id, @QueryParam("cut") String cut) {
        try {
            return Response.seeOther(questions.answeredAt("/prevalence", id, cut(cut)))
                    .build();
        } catch (InvalidInput fault) {
            return show(fault.status(), null, null, fault.getMessage());
        }
    }

    @POST
    @Path("{id}/withdrawal")
    @PermissionsAllowed(Act.DATA_CUT)
    public Response withdraw(@PathParam("id") UUID id) {
        SavedQuestionView present = questions.require(id);
        questions.put(
                id,
                new SaveQuestion(present.name(), "season=" + present.season() + "&" + present.query(), true),
                ETags.of(present.version()));
        return Response.seeOther(URI.create("/saved-questions")).build();
    }

    private static UUID cut(String given) {
        try {
            return given == null || given.isBlank() ? null : UUID.fromString(given.trim());
        } catch (IllegalArgumentException e) {
            throw InvalidInput.field(
                    "cut", "NOT_A_UUID", "'" + given + "' is not the id of a data cut; choose one of the list");
        }
    }

    private Response show(int status, String name, String query, String fault) {
        return Response.status(status)
                .entity(Templates.savedQuestions(questions.offered(), cuts.all(null), name, query, fault))
                .build();
    }
}
