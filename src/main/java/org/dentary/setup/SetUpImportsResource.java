package org.dentary.setup;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.ETags;

/** Set-up files: a dry run first, then the posting of what was looked through. */
@Path("/api/v1/set-up-imports/{id}")
@Produces(MediaType.APPLICATION_JSON)
public class SetUpImportsResource {
    private final SetUpImportService imports;

    SetUpImportsResource(SetUpImportService imports) {
        this.imports = imports;
    }

    /** Looks a file through: {@code list} names the list, the body is the file. */
    @PUT
    @Consumes({"text/csv", "application/geo+json"})
    @PermissionsAllowed(Act.SET_UP)
    public Response preview(
            @PathParam("id") UUID id,
            @QueryParam("list") String list,
            @HeaderParam("If-Match") String ifMatch,
            byte[] file) {
        SetUpImportService.Previewed previewed = imports.preview(id, list, file, ifMatch);
        return answer(previewed.isNew() ? 201 : 200, previewed.view());
    }

    @GET
    @PermissionsAllowed(Act.SET_UP)
    public Response find(@PathParam("id") UUID id) {
        return answer(200, imports.find(id));
    }

    @POST
    @Path("posting")
    @PermissionsAllowed(Act.SET_UP)
    public Response post(@PathParam("id") UUID id) {
        return answer(200, imports.post(id));
    }

    private static Response answer(int status, SetUpImportView view) {
        return Response.status(status)
                .entity(view)
                .header("ETag", ETags.of(view.version()))
                .build();
    }
}
