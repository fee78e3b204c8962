package org.dentary.custody.box;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.dentary.custody.chain.Answers;
import org.dentary.platform.account.Act;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Boxes and what is in them. */
@Path("/api/v1/boxes")
@Produces(MediaType.APPLICATION_JSON)
public class BoxesResource {
    private final BoxService boxes;

    private final ObjectMapper json;

    BoxesResource(BoxService boxes, ObjectMapper json) {
        this.boxes = boxes;
        this.json = json;
    }

    @PUT
    @Path("{code}")
    @Consumes(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    @Operation(summary = "Open a box; with If-Match, move it and all that is in it")
    public Response put(
            @PathParam("code") String code, @HeaderParam("If-Match") String ifMatch, @NotNull @Valid PutBox command) {
        return Answers.stored(boxes.put(code, command, ifMatch), BoxView::version);
    }

    @GET
    @Path("{code}")
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(summary = "A box, who has it and what is in it")
    public Response one(@PathParam("code") String code) {
        return Answers.now(boxes.view(code), BoxView::version);
    }

    @PUT
    @Path("{code}/contents/{content}")
    @Consumes(MediaType.WILDCARD)
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    @Operation(summary = "Put a specimen or a box into a box; the body may be left out")
    public Response putIn(@PathParam("code") String code, @PathParam("content") String content, String packing)
            throws JsonProcessingException {
        return Answers.stored(boxes.putIn(code, List.of(content), read(packing)), BoxView::version);
    }

    @DELETE
    @Path("{code}/contents/{content}")
    @Consumes(MediaType.WILDCARD)
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    @Operation(summary = "Take something out of a box; the body may be left out")
    public Response takeOut(@PathParam("code") String code, @PathParam("content") String content, String packing)
            throws JsonProcessingException {
        boxes.takeOut(code, content, read(packing));
        return Response.noContent().build();
    }

    /** The body may be left out altogether, with its type. */
    private Packing read(String packing) throws JsonProcessingException {
        return packing == null || packing.isBlank() ? Packing.NOW : json.readValue(packing, Packing.class);
    }
}
