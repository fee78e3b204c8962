package org.dentary.custody;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.dentary.custody.chain.Answers;
import org.dentary.platform.account.Act;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Who has a specimen and how it came there. */
@Path("/api/v1/specimens/{code}/custody")
@Produces(MediaType.APPLICATION_JSON)
public class CustodyResource {
    private final CustodyService custody;

    CustodyResource(CustodyService custody) {
        this.custody = custody;
    }

    @GET
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(summary = "The chain of custody: every event with its hash, verified, and what is wrong with it")
    public Response chain(@PathParam("code") String code) {
        return Answers.plain(custody.chain(code));
    }
}
