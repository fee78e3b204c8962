package org.dentary.story.dossier;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.ByteArrayOutputStream;
import java.util.List;
import org.dentary.platform.account.Act;
import org.dentary.platform.table.CsvTable;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Specimens drawn at random from a season, for an audit. */
@Path("/api/v1/custody")
@Produces(MediaType.APPLICATION_JSON)
public class AuditSampleResource {
    private static final List<String> COLUMNS =
            List.of("code", "kit", "tissue", "side", "station", "custodian", "entries", "concerns");

    private final AuditSampleService samples;

    AuditSampleResource(AuditSampleService samples) {
        this.samples = samples;
    }

    /** A sample as sent out. */
    public record Drawn(AuditSample sample, List<AuditSample.Item> items) {
        public Drawn {
            items = List.copyOf(items);
        }
    }

    @GET
    @Path("audit-sample")
    @PermissionsAllowed(Act.LEDGER_READ)
    @Operation(
            summary = "Specimens drawn at random from a season, with what is wrong with each",
            description =
                    "Every code gets the number SHA-256(seed, a blank, code); the smallest numbers are the sample."
                            + " Without a seed a fresh one is taken; send it again to draw the same.")
    public Response draw(
            @QueryParam("season") String season, @QueryParam("size") String size, @QueryParam("seed") String seed) {
        AuditSample sample = samples.draw(season, size, seed);
        return Response.ok(new Drawn(sample, samples.items(sample))).build();
    }

    @GET
    @Path("audit-sample.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.LEDGER_READ)
    @Operation(summary = "The same as CSV")
    public Response csv(
            @QueryParam("season") String season, @QueryParam("size") String size, @QueryParam("seed") String seed) {
        AuditSample sample = samples.draw(season, size, seed);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, COLUMNS)) {
            samples.items(sample)
                    .forEach(item -> csv.row(
                            item.code(),
                            item.kit(),
                            item.tissue(),
                            item.side(),
                            item.station(),
                            item.custodian(),
                            item.entries(),
                            String.join(" ", item.concerns())));
        }
        return named(Response.ok(out.toByteArray()), sample, "csv");
    }

    @GET
    @Path("audit-sample.pdf")
    @Produces("application/pdf")
    @PermissionsAllowed(Act.LEDGER_READ)
    @Operation(
            summary = "How the sample was drawn, then the dossier of every specimen in it",
            description = "Everything recorded is sealed first. Each dossier counts its own pages.")
    public Response pdf(
            @QueryParam("season") String season, @QueryParam("size") String size, @QueryParam("seed") String seed) {
        AuditSample sample = samples.draw(season, size, seed);
        StreamingOutput body = out -> samples.print(sample, out);
        return named(Response.ok(body), sample, "pdf");
    }

    private static Response named(Response.ResponseBuilder answer, AuditSample sample, String kind) {
        String name =
                "audit-sample-" + sample.season().replaceAll("[^0-9A-Za-z-]", "-") + "-" + sample.seed() + "." + kind;
        return answer.header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"")
                .build();
    }
}
