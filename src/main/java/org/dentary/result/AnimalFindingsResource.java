package org.dentary.result;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Response;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.ItemList;
import org.dentary.result.release.ReleaseService;

/** What was found in an animal, and the release of it. */
@Path("/api/v1/animals")
public class AnimalFindingsResource {
    private final FindingService findings;
    private final ReleaseService releases;

    AnimalFindingsResource(FindingService findings, ReleaseService releases) {
        this.findings = findings;
        this.releases = releases;
    }

    /** A release: of which disease, and why now. */
    public record Release(
            @NotBlank(message = "is required: a disease's code")
            String disease,

            @Size(max = 500, message = "takes at most 500 characters")
            String reason) {}

    @GET
    @Path("{kit}/findings")
    @PermissionsAllowed(Act.RESULT_READ)
    public Response ofAnimal(@PathParam("kit") String kit) {
        return Reply.ok(new ItemList<>(findings.ofKit(kit)));
    }

    @PUT
    @Path("{kit}/release")
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response release(@PathParam("kit") String kit, @NotNull @Valid Release command) {
        ReleaseService.Done done = releases.release(kit, command.disease(), command.reason());
        return Reply.answer(done.fresh() ? 201 : 200, done.release());
    }
}
