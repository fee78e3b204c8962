package org.dentary.result.review;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.Page;

/** Odd outcomes for a person to look at, for those who may know what is not released. */
@Path("/api/v1/reviews")
@Produces(MediaType.APPLICATION_JSON)
public class ReviewsResource {
    private static final int MOST = 1_000;

    private final ReviewService reviews;

    ReviewsResource(ReviewService reviews) {
        this.reviews = reviews;
    }

    /** What nobody looked at yet, oldest first. */
    @GET
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response waiting(
            @QueryParam("after") String after,
            @QueryParam("limit") @DefaultValue("200") int limit,
            @Context UriInfo address) {
        return reviews.waiting(after, Page.size(limit, MOST)).answer(address, "after", ReviewService::mark);
    }

    /** Who looked at what, newest first. */
    @GET
    @Path("looks")
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response looks(
            @QueryParam("before") UUID before,
            @QueryParam("limit") @DefaultValue("200") int limit,
            @Context UriInfo address) {
        return reviews.looks(before, Page.size(limit, MOST)).answer(address, "before", LookView::id);
    }

    /** Records that somebody looked. */
    @PUT
    @Path("looks/{id}")
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response put(@PathParam("id") UUID id, @NotNull @Valid LookedAt look) {
        ReviewService.Looked looked = reviews.put(id, look);
        return Reply.answer(looked.fresh() ? 201 : 200, looked.look());
    }
}
