package org.dentary.prevalence.saved;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.ETags;
import org.dentary.platform.table.ItemList;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Questions of the prevalence report with a name. */
@Path("/api/v1/saved-questions")
public class SavedQuestionsResource {
    private final SavedQuestionService questions;

    SavedQuestionsResource(SavedQuestionService questions) {
        this.questions = questions;
    }

    @PUT
    @Path("{id}")
    @PermissionsAllowed(Act.DATA_CUT)
    @Operation(
            summary = "Keep a question under a name",
            description = "query is the part of a prevalence address behind the question mark. With If-Match name and"
                    + " question change; withdrawn true takes it off the list.")
    public Response put(
            @PathParam("id") UUID id,
            @NotNull @Valid SaveQuestion command,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch) {
        SavedQuestionService.Made made = questions.put(id, command, ifMatch);
        return Response.status(made.fresh() ? 201 : 200)
                .header(HttpHeaders.ETAG, ETags.of(made.question().version()))
                .entity(made.question())
                .build();
    }

    @GET
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(summary = "The questions offered, by name")
    public ItemList<SavedQuestionView> list() {
        return new ItemList<>(questions.offered());
    }

    @GET
    @Path("{id}/answer")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(
            summary = "Where the question is answered",
            description = "303 to the prevalence address, on the cut if one is named, else on the lines as they are.")
    public Response answer(@PathParam("id") UUID id, @QueryParam("cut") UUID cut) {
        return Response.seeOther(questions.answeredAt("/api/v1/prevalence", id, cut))
                .build();
    }
}
