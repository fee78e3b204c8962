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

/** How the laboratories' own files read. */
@Path("/api/v1/column-maps")
@Produces(MediaType.APPLICATION_JSON)
public class ColumnMapsResource {
    private final ColumnMapService maps;

    ColumnMapsResource(ColumnMapService maps) {
        this.maps = maps;
    }

    /** Every edition, by laboratory, newest first; the newest rules. */
    @GET
    @PermissionsAllowed(Act.RESULT_READ)
    public ItemList<ColumnMaps.Edition> all() {
        return new ItemList<>(maps.all());
    }

    /** Keeps the next edition of a laboratory's map. */
    @PUT
    @Path("{laboratory}/{edition}")
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response keep(
            @PathParam("laboratory") String laboratory,
            @PathParam("edition") int edition,
            @NotNull @Valid ColumnMap map) {
        ColumnMapService.Kept kept = maps.keep(laboratory, edition, map);
        return Response.status(kept.fresh() ? 201 : 200).entity(kept.edition()).build();
    }
}
