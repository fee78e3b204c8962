package org.dentary.submission.outstanding;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.Page;
import org.dentary.platform.table.StreamedCsv;

/** What waits to be sent or reported, and how long laboratories take. */
@Path("/api/v1/submissions")
@Produces(MediaType.APPLICATION_JSON)
public class OutstandingResource {
    private static final int MOST = 1_000;

    private final OutstandingLists lists;
    private final StreamedCsv files;

    OutstandingResource(OutstandingLists lists, StreamedCsv files) {
        this.lists = lists;
        this.files = files;
    }

    /**
     * What is where.
     *
     * @param waiting collected and in no submission, those that have waited longest
     * @param overdue sent and not reported within the laboratory's promised days, those that have waited longest
     * @param waits how many there are of both
     * @param turnaround days from dispatch to final report
     */
    public record Overview(
            List<OutstandingQueries.Waiting> waiting,
            List<OutstandingQueries.Overdue> overdue,
            OutstandingLists.Waits waits,
            List<OutstandingQueries.Turnaround> turnaround) {}

    @GET
    @Path("overview")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Overview overview(@QueryParam("limit") @DefaultValue("200") int limit) {
        int most = Page.size(limit, MOST);
        OutstandingLists.Part<OutstandingQueries.Waiting> waiting = lists.waiting(null, most);
        OutstandingLists.Part<OutstandingQueries.Overdue> overdue = lists.overdue(null, most);
        return new Overview(
                waiting.items(),
                overdue.items(),
                new OutstandingLists.Waits(waiting.total(), overdue.total()),
                lists.turnaround());
    }

    @GET
    @Path("waiting")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response waiting(
            @QueryParam("after") String after,
            @QueryParam("limit") @DefaultValue("200") int limit,
            @Context UriInfo address) {
        return lists.waiting(after, Page.size(limit, MOST))
                .page()
                .answer(address, "after", OutstandingQueries.Waiting::code);
    }

    @GET
    @Path("overdue")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response overdue(
            @QueryParam("after") String after,
            @QueryParam("limit") @DefaultValue("200") int limit,
            @Context UriInfo address) {
        return lists.overdue(after, Page.size(limit, MOST)).page().answer(address, "after", OutstandingLists::mark);
    }

    @GET
    @Path("waiting.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response waitingCsv() {
        return files.<OutstandingQueries.WaitingRow>file(
                "waiting.csv",
                List.of(
                        "code",
                        "kit",
                        "tissue",
                        "side",
                        "preservation",
                        "collectedOn",
                        "days",
                        "station",
                        "custodian",
                        "custodianName"),
                lists.waiting(),
                one -> new Object[] {
                    one.code(),
                    one.kit(),
                    one.tissue(),
                    one.side(),
                    one.preservation(),
                    one.collectedOn(),
                    one.days(),
                    one.station(),
                    one.custodian(),
                    one.custodianName()
                });
    }

    @GET
    @Path("overdue.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response overdueCsv() {
        return files.<OutstandingQueries.OverdueRow>file(
                "overdue.csv",
                List.of("submission", "id", "laboratory", "code", "dispatchedAt", "days", "promisedDays"),
                lists.overdue(),
                one -> new Object[] {
                    one.number(),
                    one.submission(),
                    one.laboratory(),
                    one.code(),
                    one.dispatchedAt(),
                    one.days(),
                    one.promisedDays()
                });
    }

    @GET
    @Path("turnaround.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response turnaroundCsv() {
        return Reply.csv(
                "turnaround.csv",
                List.of("laboratory", "findings", "median", "ninetieth", "promisedDays"),
                lists.turnaround().stream()
                        .map(one -> new Object[] {
                            one.laboratory(), one.findings(), one.median(), one.ninetieth(), one.promisedDays()
                        })
                        .toList());
    }
}
