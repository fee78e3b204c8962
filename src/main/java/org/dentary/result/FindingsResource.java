package org.dentary.result;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.ETags;

/** Findings by hand. */
@Path("/api/v1/findings")
public class FindingsResource {
    private final FindingService findings;

    FindingsResource(FindingService findings) {
        this.findings = findings;
    }

    @PUT
    @Path("{id}")
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response put(@PathParam("id") UUID id, @NotNull @Valid RecordFinding command) {
        FindingService.Recorded recorded = findings.put(id, command);
        return answer(Response.status(recorded.fresh() ? 201 : 200), recorded.finding());
    }

    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.RESULT_READ)
    public Response get(@PathParam("id") UUID id) {
        return answer(Response.ok(), findings.finding(id));
    }

    private static Response answer(Response.ResponseBuilder answer, FindingView finding) {
        return answer.entity(finding).header(HttpHeaders.ETAG, ETags.of(0)).build();
    }
}
