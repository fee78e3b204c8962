package org.dentary.custody;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.photo.PhotoReader;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Who has a specimen and how it came there. */
@Path("/api/v1/specimens/{code}/custody")
@Produces(MediaType.APPLICATION_JSON)
public class CustodyResource {
    private static final List<String> SIZES = List.of("large", "small");

    private final CustodyService custody;

    CustodyResource(CustodyService custody) {
        this.custody = custody;
    }

    @GET
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(summary = "The chain of custody: every event with its hash, verified, and what is wrong with it")
    public Response chain(@PathParam("code") String code) {
        return Reply.ok(custody.chain(code));
    }

    /**
     * A photograph that is evidence of one of the events, as JPEG: for whoever may see that event.
     *
     * @param size {@code large} (the longest side at most 2,560 pixels) or {@code small} (400); large when left out
     */
    @GET
    @Path("evidence/{id}")
    @Produces(PhotoReader.JPEG)
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(summary = "A photo that is evidence of a custody event")
    public Response picture(@PathParam("code") String code, @PathParam("id") UUID id, @QueryParam("size") String size) {
        if (size != null && !SIZES.contains(size)) {
            throw InvalidInput.field("size", "INVALID_VALUE", "'" + size + "' is not one of large, small");
        }
        return Response.ok(custody.picture(code, id, "small".equals(size)))
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"evidence.jpg\"")
                .build();
    }
}
