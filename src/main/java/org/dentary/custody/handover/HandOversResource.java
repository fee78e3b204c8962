package org.dentary.custody.handover;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.dentary.custody.chain.Answers;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.table.Page;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Offering, accepting and refusing what is handed over. */
@Path("/api/v1/hand-overs")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
public class HandOversResource {
    private static final List<String> STATES = List.of("OFFERED", "ACCEPTED", "PART_ACCEPTED", "REFUSED", "WITHDRAWN");

    private final HandOverService handOvers;
    private final OfferAnswerService answers;

    HandOversResource(HandOverService handOvers, OfferAnswerService answers) {
        this.handOvers = handOvers;
        this.answers = answers;
    }

    @PUT
    @Path("{id}")
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    @Operation(summary = "Offer codes to somebody; custody moves when the receiver accepts")
    public Response offer(
            @PathParam("id") UUID id, @HeaderParam("If-Match") String ifMatch, @NotNull @Valid OfferHandOver offer) {
        return Answers.stored(handOvers.offer(id, offer, ifMatch), HandOverView::version);
    }

    @POST
    @Path("{id}/acceptance")
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    @Operation(summary = "Accept what was counted; what is missing or over becomes a discrepancy")
    public Response accept(@PathParam("id") UUID id, @NotNull @Valid AcceptHandOver acceptance) {
        return Answers.now(answers.accept(id, acceptance), HandOverView::version);
    }

    @POST
    @Path("{id}/refusal")
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    @Operation(summary = "Refuse what was offered, or withdraw one's own offer")
    public Response refuse(@PathParam("id") UUID id, @NotNull @Valid RefuseHandOver refusal) {
        return Answers.now(answers.refuse(id, refusal), HandOverView::version);
    }

    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(summary = "A hand-over with every code and how it stands")
    public Response one(@PathParam("id") UUID id) {
        return Answers.now(handOvers.read(id), HandOverView::version);
    }

    @GET
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(summary = "Hand-overs, newest first, by state; without their codes")
    public Response list(
            @QueryParam("state") String state,
            @QueryParam("before") String before,
            @QueryParam("limit") @DefaultValue("100") int limit,
            @Context UriInfo uri) {
        if (state != null && !STATES.contains(state)) {
            throw InvalidInput.field("state", "INVALID_VALUE", "state is one of " + String.join(", ", STATES));
        }
        int most = Answers.limit(limit);
        Answers.Mark mark = Answers.Mark.read("before", before, Instant::parse);
        return Page.of(handOvers.list(state, mark, most + 1), most)
                .answer(
                        uri,
                        "before",
                        last -> new Answers.Mark(
                                last.offeredAt().toString(), last.id().toString()));
    }
}
