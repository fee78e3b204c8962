package org.dentary.result.mapping;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.dentary.platform.account.Act;
import org.dentary.platform.table.ItemList;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** What the laboratories' own codes in HL7 messages mean. */
@Path("/api/v1/code-maps")
@Produces(MediaType.APPLICATION_JSON)
public class CodeMapsResource {
    private final CodeMapService maps;

    CodeMapsResource(CodeMapService maps) {
        this.maps = maps;
    }

    @GET
    @PermissionsAllowed(Act.RESULT_READ)
    @Operation(summary = "Every edition of the laboratories' code maps, by laboratory, newest first")
    public ItemList<CodeMaps.Edition> all() {
        return new ItemList<>(maps.all());
    }

    @PUT
    @Path("{laboratory}/{edition}")
    @PermissionsAllowed(Act.RESULT_WRITE)
    @Operation(
            summary = "Keep the next edition of a laboratory's code map",
            description = "For HL7 messages made from inForceFrom on (MSH-7). A code is identifier^system, or the"
                    + " identifier alone for every system.")
    public Response keep(
            @PathParam("laboratory") String laboratory,
            @PathParam("edition") int edition,
            @NotNull @Valid CodeMap map) {
        CodeMapService.Kept kept = maps.keep(laboratory, edition, map);
        return Response.status(kept.fresh() ? 201 : 200).entity(kept.edition()).build();
    }
}
