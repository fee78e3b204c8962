package org.dentary.intake.mixup;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.ETags;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Suspected mix-ups of labels and animals. */
@Path("/api/v1/suspected-mix-ups")
public class MixUpsResource {
    private static final int MOST = 10_000;

    private final MixUpService mixUps;

    MixUpsResource(MixUpService mixUps) {
        this.mixUps = mixUps;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.PUT_RIGHT_ASK)
    @Operation(
            summary = "Suspected mix-ups, newest first",
            description =
                    "Found anew from what is recorded: the same number on two kits, a jaw without tissue beside"
                            + " tissue without a jaw, labels scanned together that are not one kit, jars under another code, jaws"
                            + " that do not fit. `all=true` adds those that were set aside. A sampler sees the stations they serve.")
    public Response list(@QueryParam("all") boolean all) {
        return Reply.ok(new ItemList<>(mixUps.found(all, MOST)));
    }

    @GET
    @Path("table.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.PUT_RIGHT_ASK)
    @Operation(summary = "Suspected mix-ups as CSV, times on the clock of the station")
    public Response table(@QueryParam("all") boolean all) {
        List<MixUp> found = mixUps.found(all, MOST);
        StreamingOutput body = out -> {
            try (CsvTable csv = CsvTable.on(
                    out, List.of("kit", "other", "sign", "detail", "station", "died_on", "at", "set_aside"))) {
                found.forEach(one -> csv.row(
                        one.kit(),
                        one.other(),
                        one.sign().name(),
                        one.detail(),
                        one.station(),
                        one.diedOn(),
                        one.at()
                                .truncatedTo(ChronoUnit.SECONDS)
                                .atZone(ZoneId.of(one.zone()))
                                .toOffsetDateTime(),
                        one.setAside()));
            }
        };
        return Reply.file(body, CsvTable.MEDIA_TYPE, "suspected-mix-ups.csv");
    }

    @PUT
    @Path("set-aside/{id}")
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.PUT_RIGHT)
    @Operation(summary = "Say that a suspected mix-up is none, and why")
    public Response setAside(@PathParam("id") UUID id, @NotNull @Valid SetAside aside) {
        boolean isNew = mixUps.setAside(id, aside);
        return Response.status(isNew ? 201 : 200)
                .header(HttpHeaders.ETAG, ETags.of(0))
                .entity(aside)
                .build();
    }
}
