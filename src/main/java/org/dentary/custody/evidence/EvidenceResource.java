package org.dentary.custody.evidence;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.photo.PhotoReader;
import org.dentary.platform.request.Reply;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Photographs to be named as evidence by a custody event. */
@Path("/api/v1/custody-evidence")
public class EvidenceResource {
    private final EvidenceService evidence;

    EvidenceResource(EvidenceService evidence) {
        this.evidence = evidence;
    }

    /** Keeps a photograph: JPEG or PNG, at most 15 MB and 52 million pixels. */
    @PUT
    @Path("{id}")
    @Consumes({PhotoReader.JPEG, PhotoReader.PNG})
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    @Operation(
            summary = "Keep a photo as evidence of a custody event still to be recorded",
            description = "The picture is made anew as JPEG, upright and at most 2,560 pixels long; nothing else of the"
                    + " file is kept, neither place nor time nor device. Name its id under `photos` of the event, whose"
                    + " hashed bytes then hold SHA-256(salt, picture).")
    public Response keep(
            @PathParam("id") UUID id, @HeaderParam(HttpHeaders.CONTENT_TYPE) MediaType type, InputStream file)
            throws IOException {
        byte[] bytes = file == null ? new byte[0] : file.readNBytes(PhotoReader.MOST_BYTES + 1);
        PhotoReader.Photo photo = PhotoReader.read(bytes, type.getType() + "/" + type.getSubtype());
        EvidenceService.Kept kept = evidence.keep(id, photo);
        return Reply.versioned(kept.isNew() ? 201 : 200, kept.photo(), 0);
    }

    /** Erases a photograph for good. */
    @DELETE
    @Path("{id}")
    @PermissionsAllowed(Act.EVIDENCE_ERASE)
    @Operation(
            summary = "Erase a photo that is evidence, for good",
            description = "The picture and the salt of its digest are destroyed, for every entry that shows it. Its"
                    + " digest stays in those entries, so that every chain verifies as before; who erased it, when and why"
                    + " is told wherever it was shown.")
    public Response erase(@PathParam("id") UUID id, @QueryParam("reason") String reason) {
        evidence.erase(id, reason);
        return Response.noContent().build();
    }
}
