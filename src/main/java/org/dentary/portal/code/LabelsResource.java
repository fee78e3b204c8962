package org.dentary.portal.code;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.dentary.kit.VoidLabel;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.ETags;

/** Takes a label out of use. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
public class LabelsResource {
    private final CodeService codes;

    LabelsResource(CodeService codes) {
        this.codes = codes;
    }

    /** Voids a label; 409 where it is bound. */
    @PUT
    @Path("labels/{code}/voiding")
    @Consumes(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.KIT_ISSUE)
    public Response voidLabel(@PathParam("code") String code, @NotNull @Valid VoidLabel voiding) {
        boolean created = codes.voidLabel(code, voiding);
        CodeView label = codes.code(code);
        return Response.status(created ? 201 : 200)
                .entity(label)
                .header(HttpHeaders.ETAG, ETags.of(label.version()))
                .build();
    }
}
