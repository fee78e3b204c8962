package org.dentary.custody.event;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.dentary.custody.chain.Answers;
import org.dentary.platform.account.Act;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** What happened to specimens and boxes, recorded by hand. */
@Path("/api/v1/custody-events")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
public class CustodyEventsResource {
    private final CustodyEventService events;

    CustodyEventsResource(CustodyEventService events) {
        this.events = events;
    }

    @PUT
    @Path("{id}")
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    @Operation(summary = "Record what happened to codes: a temperature, a seal, a store, a loss, a correction")
    public Response record(
            @PathParam("id") UUID id,
            @HeaderParam("If-Match") String ifMatch,
            @NotNull @Valid RecordCustodyEvent command) {
        return Answers.stored(events.record(id, command, ifMatch), act -> 0);
    }
}
