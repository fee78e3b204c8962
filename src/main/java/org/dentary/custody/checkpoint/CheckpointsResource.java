package org.dentary.custody.checkpoint;

import io.quarkus.security.PermissionsAllowed;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.util.UUID;
import org.dentary.ledger.Checkpoint;
import org.dentary.ledger.CheckpointService;
import org.dentary.ledger.ExportLines;
import org.dentary.ledger.InclusionProof;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.Page;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** The ledger's checkpoints and proofs, and all that is needed to check them without this service. */
@Path("/api/v1/custody")
@Produces(MediaType.APPLICATION_JSON)
public class CheckpointsResource {
    private static final int MOST = 1_000;

    private final CheckpointService checkpoints;

    CheckpointsResource(CheckpointService checkpoints) {
        this.checkpoints = checkpoints;
    }

    @PUT
    @Path("checkpoints/{id}")
    @PermissionsAllowed(Act.CHECKPOINT)
    @Operation(
            summary = "Seal all events recorded since the last checkpoint; sent again, the same checkpoint comes back")
    public Response make(@PathParam("id") UUID id) {
        CheckpointService.Made made = checkpoints.checkpoint(id);
        return Reply.answer(made.created() ? 201 : 200, CheckpointView.of(made.checkpoint()));
    }

    @GET
    @Path("checkpoints")
    @PermissionsAllowed(Act.LEDGER_READ)
    @Operation(summary = "The chain of checkpoints, newest first")
    public Response list(
            @QueryParam("before") @DefaultValue("9223372036854775807") long before,
            @QueryParam("limit") @DefaultValue("100") int limit,
            @Context UriInfo uri) {
        int most = Page.size(limit, MOST);
        return Page.of(checkpoints.checkpoints(before, most + 1), most)
                .map(CheckpointView::of)
                .answer(uri, "before", CheckpointView::number);
    }

    @GET
    @Path("checkpoints/{number:\\d{1,18}}")
    @PermissionsAllowed(Act.LEDGER_READ)
    @Operation(summary = "One checkpoint by its number")
    public Response one(@PathParam("number") long number) {
        return Response.ok(CheckpointView.of(found(number))).build();
    }

    @GET
    @Path("checkpoints/{number:\\d{1,18}}/proof")
    @PermissionsAllowed(Act.LEDGER_READ)
    @Operation(summary = "The proof that one event lies under a checkpoint, to be kept outside this service")
    public Response proof(@PathParam("number") long number, @QueryParam("event") String event) {
        found(number);
        UUID id = eventId(event);
        InclusionProof proof = checkpoints
                .proof(id)
                .orElseThrow(() -> new NotFound(
                        "EVENT_NOT_SEALED",
                        "No checkpoint seals event " + id
                                + "; if it was just recorded, make a checkpoint and ask for that"));
        if (proof.checkpoint().number() != number) {
            throw new NotFound(
                    "EVENT_UNDER_OTHER_CHECKPOINT",
                    "Event " + id + " lies under checkpoint "
                            + proof.checkpoint().number() + ", not " + number);
        }
        return Response.ok(ExportLines.proof(proof)).build();
    }

    @GET
    @Path("export")
    @Produces("application/jsonl")
    @PermissionsAllowed(Act.LEDGER_READ)
    @Operation(
            summary = "The whole ledger as JSON lines, sealed first; check it with deploy/verify-custody",
            description = "The format and the rules are in docs/custody-verification.md. They show that nothing was"
                    + " changed since it was recorded, not that the first entry was true.")
    public Response export() {
        long last = checkpoints.sealAll().number();
        StreamingOutput body = checkpoints::export;
        return Response.ok(body)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "attachment; filename=\"custody-to-checkpoint-" + last + ".jsonl\"")
                .build();
    }

    @GET
    @Path("key")
    @Produces("application/x-pem-file")
    @PermitAll
    @Operation(summary = "The public key that signs checkpoints, as PEM; anybody may have it")
    public String key() {
        return checkpoints.publicKeyPem();
    }

    private Checkpoint found(long number) {
        return checkpoints
                .find(number)
                .orElseThrow(() -> new NotFound("CHECKPOINT_UNKNOWN", "There is no checkpoint " + number));
    }

    private static UUID eventId(String event) {
        try {
            return UUID.fromString(event == null ? "" : event);
        } catch (IllegalArgumentException e) {
            throw InvalidInput.field(
                    "event",
                    "INVALID_VALUE",
                    event == null
                            ? "name the event: ?event= and its id"
                            : "'" + event + "' is no event's id; it is a UUID as the custody chain shows it");
        }
    }
}
