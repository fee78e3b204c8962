package org.dentary.story.dossier;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import org.dentary.platform.account.Act;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** One specimen's dossier on paper. */
@Path("/api/v1/specimens/{code}/custody.pdf")
public class DossierResource {
    private final DossierService dossiers;
    private final DossierPrinter printer;

    DossierResource(DossierService dossiers, DossierPrinter printer) {
        this.dossiers = dossiers;
        this.printer = printer;
    }

    @GET
    @Produces("application/pdf")
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(
            summary = "The custody dossier of one specimen or box, to print: every entry, what is wrong, the proof",
            description =
                    "Everything recorded is sealed under a checkpoint first, so that the last entry has its proof."
                            + " What a laboratory does with a specimen is only for those who may know. Nobody's contact is on it.")
    public Response pdf(@PathParam("code") String code) {
        Dossier dossier = dossiers.sealed(code);
        return Response.ok(printer.one(dossier))
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "inline; filename=\"custody-" + dossier.custody().code() + ".pdf\"")
                .build();
    }
}
