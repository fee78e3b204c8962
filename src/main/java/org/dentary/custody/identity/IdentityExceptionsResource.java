package org.dentary.custody.identity;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
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
import org.dentary.custody.chain.Labels;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.table.Page;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Mislabeled specimens that cannot be collected again, and who stands for them. */
@Path("/api/v1/identity-exceptions")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
public class IdentityExceptionsResource {
    private static final List<String> STATES =
            List.of(IdentityExceptionView.OPEN, IdentityExceptionView.GRANTED, IdentityExceptionView.REFUSED);

    private final IdentityExceptionService exceptions;
    private final IdentityExceptionViews views;
    private final Labels labels;

    IdentityExceptionsResource(IdentityExceptionService exceptions, IdentityExceptionViews views, Labels labels) {
        this.exceptions = exceptions;
        this.views = views;
        this.labels = labels;
    }

    /** Vouches for a specimen, signed with the account's own password; sent again it changes nothing. */
    @PUT
    @Path("{id}")
    @PermissionsAllowed(Act.IDENTITY_EXCEPTION_ASK)
    @Operation(summary = "Vouch for a received specimen whose label does not match and that cannot be collected again")
    public Response ask(@PathParam("id") UUID id, @NotNull @Valid AskIdentityException command) {
        return Answers.stored(exceptions.ask(id, command), IdentityExceptionView::version);
    }

    /** Decides once and for ever, by another person than who asked. */
    @POST
    @Path("{id}/decision")
    @PermissionsAllowed(Act.IDENTITY_EXCEPTION_DECIDE)
    @Operation(summary = "Grant or refuse an identity exception, by a second person; it is never withdrawn")
    public Response decide(@PathParam("id") UUID id, @NotNull @Valid DecideIdentityException command) {
        return Answers.now(exceptions.decide(id, command), IdentityExceptionView::version);
    }

    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(summary = "An identity exception as it stands")
    public Response one(@PathParam("id") UUID id) {
        return Answers.now(views.view(id), IdentityExceptionView::version);
    }

    @GET
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(summary = "Identity exceptions, the newest first, by state, specimen or who asked")
    public Response list(
            @QueryParam("state") String state,
            @QueryParam("code") String code,
            @QueryParam("askedBy") String askedBy,
            @QueryParam("before") String before,
            @QueryParam("limit") @DefaultValue("100") int limit,
            @Context UriInfo uri) {
        if (state != null && !STATES.contains(state)) {
            throw InvalidInput.field(
                    "state", "INVALID_VALUE", "'" + state + "' is not one of " + String.join(", ", STATES));
        }
        int most = Answers.limit(limit);
        Answers.Mark mark = Answers.Mark.read("before", before, Instant::parse);
        return Page.of(
                        views.list(
                                new IdentityExceptionQueries.Filter(
                                        state,
                                        code == null
                                                ? null
                                                : labels.label("code", code).code(),
                                        askedBy,
                                        mark),
                                most + 1),
                        most)
                .answer(uri, "before", IdentityExceptionView::mark);
    }
}
