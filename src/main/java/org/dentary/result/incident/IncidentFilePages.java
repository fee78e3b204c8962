package org.dentary.result.incident;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;

/** The tables of one first detection as files. */
@Path("/incidents")
@Produces(CsvTable.MEDIA_TYPE)
public class IncidentFilePages {
    private final IncidentService incidents;

    IncidentFilePages(IncidentService incidents) {
        this.incidents = incidents;
    }

    @GET
    @Path("{id}/same-table.csv")
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response sameTable(@PathParam("id") UUID id) {
        return Reply.csv(
                "same-table.csv",
                List.of("kit", "station", "sampled_on", "sampled_by"),
                incidents.incident(id).sameTable().stream()
                        .map(one -> new Object[] {one.kit(), one.station(), one.sampledOn(), one.sampledBy()})
                        .toList());
    }

    @GET
    @Path("{id}/changes.csv")
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response changes(@PathParam("id") UUID id) {
        return Reply.csv(
                "changes.csv",
                List.of("at", "by", "step", "was"),
                incidents.incident(id).changes().stream()
                        .map(one -> new Object[] {one.at(), one.actor(), one.kind(), one.was()})
                        .toList());
    }
}
