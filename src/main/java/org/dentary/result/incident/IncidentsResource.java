package org.dentary.result.incident;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
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
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.OffsetDateTime;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.ETags;
import org.dentary.platform.table.Page;

/** First detections, for those who may know what is not released. */
@Path("/api/v1/incidents")
@Produces(MediaType.APPLICATION_JSON)
public class IncidentsResource {
    private static final int MOST = 1_000;

    private final IncidentService incidents;

    IncidentsResource(IncidentService incidents) {
        this.incidents = incidents;
    }

    /** That somebody on the list was told. */
    public record Told(
            @NotNull(message = "is required: when, with offset")
            OffsetDateTime toldAt,

            @Size(max = 500, message = "takes at most 500 characters")
            String note) {}

    /** How the incident ends. */
    public record Closing(
            @NotNull(message = "is required: true or false") Boolean confirmed,

            @NotBlank(message = "is required: what was found, in a sentence")
            @Size(max = 1000, message = "takes at most 1,000 characters")
            String note) {}

    /**
     * Incidents, open ones first.
     *
     * @param after id of the one at which the page before ended, from its Link
     */
    @GET
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response all(
            @QueryParam("after") UUID after,
            @QueryParam("limit") @DefaultValue("200") int limit,
            @Context UriInfo address) {
        return incidents.page(after, Page.size(limit, MOST)).answer(address, "after", IncidentView.Head::id);
    }

    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response one(@PathParam("id") UUID id) {
        return Response.ok(incidents.incident(id)).build();
    }

    /** Where a step stands; its version goes along as If-Match. */
    @PUT
    @Path("{id}/steps/{kind}")
    @PermissionsAllowed(Act.INCIDENT_WRITE)
    public Response settle(
            @PathParam("id") UUID id,
            @PathParam("kind") IncidentStep kind,
            @NotNull @Valid SettleStep step,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch) {
        IncidentView.Step settled = incidents.settle(id, kind, step, ifMatch);
        return Response.ok(settled)
                .header(HttpHeaders.ETAG, ETags.of(settled.version()))
                .build();
    }

    /** That somebody on the list was told, in its order or with the reason why not. */
    @POST
    @Path("{id}/tellings/{position}")
    @PermissionsAllowed(Act.INCIDENT_WRITE)
    public Response tell(@PathParam("id") UUID id, @PathParam("position") int position, @NotNull @Valid Told told) {
        return Response.ok(incidents.tell(id, position, told.toldAt().toInstant(), told.note()))
                .build();
    }

    /** Closes it; from then on what it held can be released. */
    @POST
    @Path("{id}/closing")
    @PermissionsAllowed(Act.RELEASE)
    public Response close(@PathParam("id") UUID id, @NotNull @Valid Closing closing) {
        return Response.ok(incidents.close(id, closing.confirmed(), closing.note()))
                .build();
    }
}
