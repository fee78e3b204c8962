package org.dentary.prevalence.performance;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.dentary.platform.account.Act;
import org.dentary.platform.table.ItemList;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** The sets of test performance as JSON. */
@Path("/api/v1")
public class PerformanceResource {
    private final PerformanceQueries performances;

    PerformanceResource(PerformanceQueries performances) {
        this.performances = performances;
    }

    @GET
    @Path("test-performance")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.READ_COMMON)
    @Operation(
            summary = "Sets of test performance, each with its citation",
            description = "Those of kind RELATIVE are kept so that nobody takes them for sensitivities among infected"
                    + " animals; no report uses them.")
    public ItemList<PerformanceSet> sets() {
        return new ItemList<>(performances.all().sets());
    }
}
