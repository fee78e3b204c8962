package org.dentary.result.feedback;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.Page;

/** How often tissue could not be read, for reasons of tissue alone. */
@Path("/api/v1/unsuitable-tissue")
public class UnsuitableTissueResource {
    private static final int MOST = 1_000;

    private final FeedbackService feedback;

    UnsuitableTissueResource(FeedbackService feedback) {
        this.feedback = feedback;
    }

    /**
     * The rates; a sampler's are their own.
     *
     * @param by STATION, PERSON, TISSUE, PRESERVATION or DAYS_TO_FIXATION
     */
    @GET
    @Produces({MediaType.APPLICATION_JSON, "text/csv"})
    @PermissionsAllowed(Act.UNSUITABLE_READ)
    public Response rates(
            @QueryParam("by") String by,
            @QueryParam("season") @DefaultValue("") String season,
            @Context HttpHeaders headers) {
        FeedbackService.Rates rates = feedback.rates(FeedbackService.grouping(by), season);
        return CsvTable.isAsked(headers) ? csv(rates) : Reply.ok(rates);
    }

    /** The specimens that could not be read, newest report first. */
    @GET
    @Path("specimens")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.UNSUITABLE_READ)
    public Response specimens(
            @QueryParam("season") @DefaultValue("") String season,
            @QueryParam("after") String after,
            @QueryParam("limit") @DefaultValue("200") int limit,
            @Context UriInfo address) {
        return feedback.unsuitable(season, after, Page.size(limit, MOST))
                .answer(address, "after", FeedbackService::mark);
    }

    static Response csv(FeedbackService.Rates rates) {
        return Reply.csv(
                "unsuitable.csv",
                List.of("group", "unsuitable", "reported", "rate", "lower", "upper", "interval"),
                rates.items().stream()
                        .map(one -> new Object[] {
                            one.group(),
                            one.unsuitable(),
                            one.reported(),
                            one.rate(),
                            one.lower(),
                            one.upper(),
                            rates.method()
                        })
                        .toList());
    }
}
