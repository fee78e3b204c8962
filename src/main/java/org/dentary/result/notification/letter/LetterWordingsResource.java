package org.dentary.result.notification.letter;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.dentary.platform.account.Act;
import org.dentary.platform.table.ItemList;

/** What letters say, edition by edition. */
@Path("/api/v1/letter-wordings")
@Produces(MediaType.APPLICATION_JSON)
public class LetterWordingsResource {
    private final WordingService wordings;

    LetterWordingsResource(WordingService wordings) {
        this.wordings = wordings;
    }

    /**
     * A wording.
     *
     * @param wording paragraphs apart by an empty line; what is filled in stands in braces
     */
    public record Wording(
            @NotBlank(message = "is required: what the letter says")
            @Size(max = 4000, message = "takes at most 4,000 characters")
            String wording) {}

    /** Every edition, by outcome, newest first. */
    @GET
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public ItemList<WordingView> all() {
        return new ItemList<>(wordings.all());
    }

    /** Writes the next edition; it is sent once another person has reviewed it. */
    @PUT
    @Path("{outcome}/{edition}")
    @PermissionsAllowed(Act.SET_UP)
    public Response write(
            @PathParam("outcome") String outcome, @PathParam("edition") int edition, @NotNull @Valid Wording body) {
        WordingService.Written written = wordings.write(outcome, edition, body.wording());
        return Response.status(written.fresh() ? 201 : 200)
                .entity(written.wording())
                .build();
    }

    @POST
    @Path("{outcome}/{edition}/review")
    @PermissionsAllowed(Act.SET_UP)
    public WordingView review(@PathParam("outcome") String outcome, @PathParam("edition") int edition) {
        return wordings.review(outcome, edition);
    }
}
