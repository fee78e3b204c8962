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
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.ETags;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;
import org.dentary.platform.table.KeysetPage;
import org.dentary.platform.table.Page;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Suspected mix-ups of labels and animals. */
@Path("/api/v1/suspected-mix-ups")
public class MixUpsResource {
    private final MixUpService mixUps;

    MixUpsResource(MixUpService mixUps) {
        this.mixUps = mixUps;
    }

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.PUT_RIGHT_ASK)
    @Operation(
            summary = "Suspected mix-ups, newest first",
            description = "Found anew from what is recorded: the same number on two kits, a jaw without tissue beside"
                    + " tissue without a jaw, labels scanned together that are not one kit, jars under another code, jaws"
                    + " that do not fit. `all=true` adds those that were set aside. A sampler sees the stations they serve. A page"
                    + " looks among the next 2,000 animals taken in and may be short, or empty, where `Link` leads on.")
    public Response list(
            @QueryParam("all") boolean all,
            @QueryParam("after") String after,
            @QueryParam("limit") Integer limit,
            @Context UriInfo address) {
        MixUpService.Page page = mixUps.page(all, after, KeysetPage.limit(limit));
        return Page.linked(Response.ok(new ItemList<>(page.found())), address, "after", page.next())
                .build();
    }

    @GET
    @Path("table.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.PUT_RIGHT_ASK)
    @Operation(summary = "Suspected mix-ups as CSV, times on the clock of the station")
    public Response table(@QueryParam("all") boolean all) {
        MixUpQueries.Reach reach = mixUps.reach(all);
        StreamingOutput body = out -> {
            try (CsvTable csv = CsvTable.on(
                    out, List.of("kit", "other", "sign", "detail", "station", "died_on", "at", "set_aside"))) {
                mixUps.each(
                        reach,
                        one -> csv.row(
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
