package org.dentary.prevalence.detection;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** What to take next, for those who take in animals: units of the stations that the account serves. */
@Path("/api/v1")
@PermissionsAllowed(Act.INTAKE)
public class TakeNextResource {
    private final ChanceService chances;
    private final CurrentAccount current;

    TakeNextResource(ChanceService chances, CurrentAccount current) {
        this.chances = chances;
        this.current = current;
    }

    @GET
    @Path("take-next")
    @Produces({MediaType.APPLICATION_JSON, "text/csv"})
    @Operation(
            summary = "How many more of which class reach the target, for the stations",
            description =
                    "The units of the stations that the account serves, short of their target once all pending results"
                            + " are in. JSON or text/csv.")
    @Parameter(name = "season", in = ParameterIn.QUERY, required = true, example = "2026")
    public Response list(@QueryParam("season") String season, @Context HttpHeaders headers) {
        return CsvTable.isAsked(headers)
                ? csv(season)
                : Reply.ok(new ItemList<>(items(season)), MediaType.APPLICATION_JSON);
    }

    @GET
    @Path("take-next.csv")
    @Produces("text/csv")
    @Operation(summary = "What to take next as a CSV file, one line a choice")
    public Response csv(@QueryParam("season") String season) {
        return Reply.file(
                ChanceCsv.takeNext(season, items(season)), CsvTable.MEDIA_TYPE, "take-next-" + season + ".csv");
    }

    private List<TakeNext> items(String season) {
        if (season == null || season.isBlank()) {
            throw InvalidInput.field("season", "REQUIRED", "season is missing; /api/v1/seasons lists them");
        }
        Account account = current.get();
        return chances.takeNext(season).stream()
                .filter(next -> next.isFor(account.stations()))
                .toList();
    }
}
