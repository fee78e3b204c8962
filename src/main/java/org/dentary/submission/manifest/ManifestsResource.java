package org.dentary.submission.manifest;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;

/** The papers of a submission. */
@Path("/api/v1/submissions")
public class ManifestsResource {
    private static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    private final ManifestService manifests;

    ManifestsResource(ManifestService manifests) {
        this.manifests = manifests;
    }

    @GET
    @Path("{id}/manifest.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response manifestCsv(@PathParam("id") UUID id) {
        return file(manifests.csv(id), CsvTable.MEDIA_TYPE, "manifest.csv");
    }

    @GET
    @Path("{id}/manifest.xlsx")
    @Produces(XLSX)
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response manifestXlsx(@PathParam("id") UUID id) {
        return file(manifests.xlsx(id), XLSX, "manifest.xlsx");
    }

    @GET
    @Path("{id}/manifest.pdf")
    @Produces("application/pdf")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response manifestPdf(@PathParam("id") UUID id) {
        return Response.ok(manifests.pdf(id), "application/pdf")
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"manifest.pdf\"")
                .build();
    }

    private static Response file(byte[] body, String type, String name) {
        return Reply.file(body, type, name);
    }
}
