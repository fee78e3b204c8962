package org.dentary.intake;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.dentary.custody.PieceService;
import org.dentary.intake.putright.SayWhy;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.request.Reply;
import org.dentary.specimen.AskReAttribution;
import org.dentary.specimen.CutPiece;
import org.dentary.specimen.ReAttributionService;
import org.dentary.specimen.ReAttributionView;
import org.dentary.story.StoryService;

/** What becomes of one specimen: pieces are cut from it, a swapped label is put right. */
@Path("/api/v1/specimens")
@Produces(MediaType.APPLICATION_JSON)
public class SpecimensResource {
    private final PieceService pieces;
    private final ReAttributionService reAttributions;
    private final StoryService stories;
    private final CurrentAccount current;

    SpecimensResource(
            PieceService pieces, ReAttributionService reAttributions, StoryService stories, CurrentAccount current) {
        this.pieces = pieces;
        this.reAttributions = reAttributions;
        this.stories = stories;
        this.current = current;
    }

    /** Adds a piece cut from the specimen, under a label of the same kit. */
    @PUT
    @Path("{code}/pieces/{child}")
    @Consumes(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.SPECIMEN_WRITE)
    public Response piece(
            @PathParam("code") String code, @PathParam("child") String child, @NotNull @Valid CutPiece given) {
        PieceService.Cut cut = pieces.cut(code, child, given);
        return Reply.versioned(cut.isNew() ? 201 : 200, stories.answer(cut.kit(), current.get(), cut.warnings()), 0);
    }

    /** Asks that what is under the label be another animal's; another person confirms. */
    @PUT
    @Path("{code}/re-attribution/{id}")
    @Consumes(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.PUT_RIGHT_ASK)
    public Response ask(
            @PathParam("code") String code, @PathParam("id") UUID id, @NotNull @Valid AskReAttribution given) {
        boolean isNew = reAttributions.ask(code, id, given);
        return answer(isNew ? 201 : 200, reAttributions.reAttribution(code, id));
    }

    /** The re-attribution as it stands. */
    @GET
    @Path("{code}/re-attribution/{id}")
    @PermissionsAllowed(Act.ANIMAL_READ)
    public Response read(@PathParam("code") String code, @PathParam("id") UUID id) {
        return answer(200, reAttributions.reAttribution(code, id));
    }

    /** Confirms it, by another person than who asked. */
    @POST
    @Path("{code}/re-attribution/{id}/confirmation")
    @PermissionsAllowed(Act.PUT_RIGHT)
    public Response confirm(@PathParam("code") String code, @PathParam("id") UUID id) {
        reAttributions.confirm(code, id);
        return answer(200, reAttributions.reAttribution(code, id));
    }

    /** Refuses it, or withdraws what one asked oneself. */
    @POST
    @Path("{code}/re-attribution/{id}/refusal")
    @Consumes(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.PUT_RIGHT_ASK)
    public Response refuse(@PathParam("code") String code, @PathParam("id") UUID id, @NotNull @Valid SayWhy why) {
        reAttributions.refuse(code, id, why.reason());
        return answer(200, reAttributions.reAttribution(code, id));
    }

    private static Response answer(int status, ReAttributionView view) {
        return Reply.versioned(status, view, view.state().equals("ASKED") ? 0 : 1);
    }
}
