package org.dentary.submission.outstanding;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;

/** What waits to be sent or reported, and how long laboratories take. */
@Path("/api/v1/submissions")
public class OutstandingResource {
    private static final int EVERY_ONE = Integer.MAX_VALUE;

    private final OutstandingLists lists;

    OutstandingResource(OutstandingLists lists) {
        this.lists = lists;
    }

    /**
     * What is where.
     *
     * @param waiting collected and in no submission
     * @param overdue sent and not reported within the laboratory's promised days
     * @param turnaround days from dispatch to final report
     */
    public record Overview(
            List<OutstandingQueries.Waiting> waiting,
            List<OutstandingQueries.Overdue> overdue,
            List<OutstandingQueries.Turnaround> turnaround) {}

    @GET
    @Path("overview")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Overview overview() {
        return new Overview(lists.waiting(EVERY_ONE), lists.overdue(EVERY_ONE), lists.turnaround());
    }

    @GET
    @Path("waiting.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response waitingCsv() {
        return Reply.csv(
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
                lists.waiting(EVERY_ONE).stream()
                        .map(one -> new Object[] {
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
                        })
                        .toList());
    }

    @GET
    @Path("overdue.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response overdueCsv() {
        return Reply.csv(
                "overdue.csv",
                List.of("submission", "id", "laboratory", "code", "dispatchedAt", "days", "promisedDays"),
                lists.overdue(EVERY_ONE).stream()
                        .map(one -> new Object[] {
                            one.number(),
                            one.submission(),
                            one.laboratory(),
                            one.code(),
                            one.dispatchedAt(),
                            one.days(),
                            one.promisedDays()
                        })
                        .toList());
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
