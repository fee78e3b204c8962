package org.dentary.portal.stock;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;

/** How kits add up. */
@Path("/api/v1/kit-stock")
public class KitStockResource {
    private static final List<String> COLUMNS = List.of(
            "station",
            "season",
            "kits",
            "printedKits",
            "used",
            "voided",
            "lost",
            "returned",
            "left",
            "usedElsewhere",
            "usedInAnotherSeason",
            "low");
    private static final List<String> BLOCK_COLUMNS = List.of(
            "block",
            "season",
            "station",
            "prints",
            "kits",
            "used",
            "voided",
            "lost",
            "returned",
            "left",
            "usedElsewhere",
            "usedInAnotherSeason",
            "voidLabels");

    private final StockService stock;

    KitStockResource(StockService stock) {
        this.stock = stock;
    }

    /** By station and season. */
    @GET
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.LABEL_PRINT)
    public ItemList<StationStock> stations() {
        return new ItemList<>(stock.stations());
    }

    @GET
    @Path("stations.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.LABEL_PRINT)
    public StreamingOutput stationsCsv() {
        List<StationStock> rows = stock.stations();
        return out -> {
            try (CsvTable csv = CsvTable.on(out, COLUMNS)) {
                rows.forEach(r -> csv.row(
                        r.station(),
                        r.season(),
                        r.kits(),
                        r.printedKits(),
                        r.used(),
                        r.voided(),
                        r.lost(),
                        r.returned(),
                        r.left(),
                        r.usedElsewhere(),
                        r.usedInAnotherSeason(),
                        r.low()));
            }
        };
    }

    @GET
    @Path("blocks.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.LABEL_PRINT)
    public StreamingOutput blocksCsv() {
        return out -> {
            try (CsvTable csv = CsvTable.on(out, BLOCK_COLUMNS)) {
                stock.tallies(r -> csv.row(
                        r.block(),
                        r.season(),
                        r.station(),
                        r.prints(),
                        r.kits(),
                        r.used(),
                        r.voided(),
                        r.lost(),
                        r.returned(),
                        r.left(),
                        r.usedElsewhere(),
                        r.usedInAnotherSeason(),
                        r.voidLabels()));
            }
        };
    }

    /** Of one block. */
    @GET
    @Path("{block: [0-9a-f-]{36}}")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.LABEL_PRINT)
    public BlockTally block(@PathParam("block") UUID block) {
        return stock.tally(block);
    }
}
