package org.dentary.portal.day;

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
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** A day at a station in numbers. */
@Path("/api/v1")
public class DayResource {
    private final DayService days;

    DayResource(DayService days) {
        this.days = days;
    }

    @GET
    @Path("station-day")
    @Produces({MediaType.APPLICATION_JSON, "text/csv"})
    @PermissionsAllowed(Act.SPECIMEN_WRITE)
    @Operation(
            summary = "A day at a station: whether animals, numbers, jaws, photos and jars add up",
            description = "By the station's clock. As text/csv: what does not add up, one line each.")
    @Parameter(name = "station", in = ParameterIn.QUERY, example = "S3", description = "The first served when left out")
    @Parameter(name = "date", in = ParameterIn.QUERY, example = "2026-11-14", description = "Today when left out")
    public Response day(
            @QueryParam("station") String station, @QueryParam("date") String date, @Context HttpHeaders headers) {
        StationDay day = days.day(station, date);
        return CsvTable.isAsked(headers) ? csv(day) : Reply.ok(day, MediaType.APPLICATION_JSON);
    }

    @GET
    @Path("station-day.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.SPECIMEN_WRITE)
    @Operation(summary = "What does not add up in a station's day, as a CSV file")
    public Response file(@QueryParam("station") String station, @QueryParam("date") String date) {
        return csv(days.day(station, date));
    }

    private static Response csv(StationDay day) {
        return Reply.csv(
                "day-" + day.station() + "-" + day.date() + ".csv",
                List.of("station", "date", "kit", "code", "what", "words"),
                day.gaps().stream()
                        .map(gap ->
                                new Object[] {day.station(), day.date(), gap.kit(), gap.code(), gap.what(), gap.words()
                                })
                        .toList());
    }
}
