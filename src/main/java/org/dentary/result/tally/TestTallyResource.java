package org.dentary.result.tally;

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
import org.dentary.platform.table.ItemList;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Reported tests counted, and one by one, to hold an invoice against. */
@Path("/api/v1/test-counts")
@PermissionsAllowed(Act.RESULT_READ)
public class TestTallyResource {
    private final TallyService tally;

    TestTallyResource(TallyService tally) {
        this.tally = tally;
    }

    @GET
    @Produces({MediaType.APPLICATION_JSON, "text/csv"})
    @Operation(
            summary = "Tests by laboratory, month, method and stage",
            description =
                    "A homogenate or a pool is one test, a preliminary report and its final one too, a correction none."
                            + " Without days: this month and the two before. JSON or text/csv.")
    public Response counts(
            @QueryParam("laboratory") String laboratory,
            @QueryParam("from") String from,
            @QueryParam("to") String to,
            @Context HttpHeaders headers) {
        List<TestCount> counts = tally.counts(tally.asked(laboratory, from, to));
        return CsvTable.isAsked(headers)
                ? Reply.csv(
                        "test-counts.csv",
                        List.of(
                                "laboratory",
                                "performedBy",
                                "month",
                                "method",
                                "stage",
                                "tests",
                                "unsuitable",
                                "invalidRuns",
                                "notTested",
                                "cancelled",
                                "corrections",
                                "specimens",
                                "accessions"),
                        counts.stream()
                                .map(c -> new Object[] {
                                    c.laboratory(),
                                    c.performedBy(),
                                    c.month(),
                                    c.method(),
                                    c.stage(),
                                    c.tests(),
                                    c.unsuitable(),
                                    c.invalidRuns(),
                                    c.notTested(),
                                    c.cancelled(),
                                    c.corrections(),
                                    c.specimens(),
                                    c.accessions()
                                })
                                .toList())
                : Reply.ok(new ItemList<>(counts), MediaType.APPLICATION_JSON);
    }

    @GET
    @Path("tests.csv")
    @Produces("text/csv")
    @Operation(summary = "Each reported test as a CSV file, in the order of an invoice")
    public Response lines(
            @QueryParam("laboratory") String laboratory, @QueryParam("from") String from, @QueryParam("to") String to) {
        return Reply.csv(
                "tests.csv",
                List.of(
                        "laboratory",
                        "performedBy",
                        "accession",
                        "item",
                        "method",
                        "stage",
                        "countsAs",
                        "testedOn",
                        "reportedOn",
                        "run",
                        "specimens"),
                tally.lines(tally.asked(laboratory, from, to)).stream()
                        .map(t -> new Object[] {
                            t.laboratory(),
                            t.performedBy(),
                            t.accession(),
                            t.item(),
                            t.method(),
                            t.stage(),
                            t.as(),
                            t.testedOn(),
                            t.reportedOn(),
                            t.run(),
                            t.specimens()
                        })
                        .toList());
    }
}
