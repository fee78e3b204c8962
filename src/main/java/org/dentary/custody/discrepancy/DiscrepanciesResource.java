package org.dentary.custody.discrepancy;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.LocalDate;
import java.util.UUID;
import org.dentary.custody.chain.Answers;
import org.dentary.platform.account.Act;
import org.dentary.platform.table.Page;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** What does not add up, and who settles it. */
@Path("/api/v1/discrepancies")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
public class DiscrepanciesResource {
    private final DiscrepancyService discrepancies;
    private final DiscrepancyViews views;

    DiscrepanciesResource(DiscrepancyService discrepancies, DiscrepancyViews views) {
        this.discrepancies = discrepancies;
        this.views = views;
    }

    @PUT
    @Path("{id}")
    @PermissionsAllowed(Act.DISCREPANCY)
    @Operation(summary = "Open, change or, with an outcome, settle a discrepancy")
    public Response put(
            @PathParam("id") UUID id, @HeaderParam("If-Match") String ifMatch, @NotNull @Valid PutDiscrepancy command) {
        return Answers.stored(discrepancies.put(id, command, ifMatch), DiscrepancyView::version);
    }

    @GET
    @Path("{id}")
    @PermissionsAllowed({Act.DISCREPANCY, Act.AUDIT_READ})
    @Operation(summary = "A discrepancy as it stands; a sampler's own")
    public Response one(@PathParam("id") UUID id) {
        return Answers.now(views.read(id), DiscrepancyView::version);
    }

    @GET
    @PermissionsAllowed({Act.DISCREPANCY, Act.AUDIT_READ})
    @Operation(summary = "Discrepancies, the next due first; a sampler's own")
    public Response list(
            @QueryParam("open") Boolean open,
            @QueryParam("owner") String owner,
            @QueryParam("subject") String subject,
            @QueryParam("code") String code,
            @QueryParam("after") String after,
            @QueryParam("limit") @DefaultValue("100") int limit,
            @Context UriInfo uri) {
        int most = Answers.limit(limit);
        Answers.Mark mark = Answers.Mark.read("after", after, LocalDate::parse);
        return Page.of(
                        views.list(
                                new DiscrepancyQueries.Filter(open, owner, views.limitedTo(), subject, code, mark),
                                most + 1),
                        most)
                .answer(uri, "after", DiscrepancyView::mark);
    }
}
