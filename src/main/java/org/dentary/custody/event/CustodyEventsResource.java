package org.dentary.custody.event;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.dentary.custody.chain.Answers;
import org.dentary.custody.evidence.TextErasureService;
import org.dentary.platform.account.Act;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** What happened to specimens and boxes, recorded by hand. */
@Path("/api/v1/custody-events")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
public class CustodyEventsResource {
    private final CustodyEventService events;
    private final TextErasureService texts;

    CustodyEventsResource(CustodyEventService events, TextErasureService texts) {
        this.events = events;
        this.texts = texts;
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

    /** Erases a text, a name or a signature that an event keeps outside its hashed bytes, for good. */
    @DELETE
    @Path("{id}/texts/{field}")
    @PermissionsAllowed(Act.EVIDENCE_ERASE)
    @Operation(
            summary = "Erase a text, the name of who signed or a signature of a custody event, for good",
            description =
                    "`id` is the event's on a chain; `field` one of reason, evidence, problemText, signedBy, signature,"
                            + " placeText, carrier, waybill. What the same act says in the entries of other codes goes too, a place in"
                            + " words from every entry, and every copy. The digests stay, so that every chain verifies as before; who"
                            + " erased it, when and why is told with the event.")
    public Response erase(
            @PathParam("id") UUID id, @PathParam("field") String field, @QueryParam("reason") String reason) {
        texts.erase(id, field, reason);
        return Response.noContent().build();
    }
}
