package org.dentary.result.imports;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.result.WaitingView;
import org.dentary.result.release.ReleaseService;

/** The files received, what is suspect and what a person must look at; each as CSV. */
@Path("/results")
@Produces(MediaType.TEXT_HTML)
public class ResultPages {
    private final ResultsPage page;
    private final ImportService imports;
    private final ReleaseService releases;

    ResultPages(ResultsPage page, ImportService imports, ReleaseService releases) {
        this.page = page;
        this.imports = imports;
        this.releases = releases;
    }

    @GET
    @PermissionsAllowed(Act.RESULT_READ)
    public Response results(@QueryParam("all") boolean whole) {
        return whole ? page.whole() : page.show(200, null, Faults.NONE);
    }

    @GET
    @Path("imports.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.RESULT_READ)
    public Response files() {
        return Reply.csv(
                "files.csv",
                List.of(
                        "id",
                        "file",
                        "laboratory",
                        "format",
                        "state",
                        "rows",
                        "postable",
                        "repeats",
                        "problems",
                        "posted",
                        "uploaded_by",
                        "uploaded_at"),
                imports.newest(Integer.MAX_VALUE).stream()
                        .map(f -> new Object[] {
                            f.id(),
                            f.fileName(),
                            f.laboratory(),
                            f.format(),
                            f.state(),
                            f.rows(),
                            f.postable(),
                            f.repeats(),
                            f.problemCount(),
                            f.posted(),
                            f.uploadedBy(),
                            f.uploadedAt()
                        })
                        .toList());
    }

    @GET
    @Path("open.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response open() {
        return Reply.csv(
                "open.csv",
                WaitingView.COLUMNS,
                releases.open().stream().map(WaitingView::row).toList());
    }
}
