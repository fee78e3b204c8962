package org.dentary.result.feedback;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Arrays;
import java.util.List;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.Page;
import org.dentary.platform.table.StreamedCsv;

/** How much tissue could not be read, and what it was. */
@Path("/unsuitable-tissue")
@Produces(MediaType.TEXT_HTML)
public class FeedbackPages {
    /** As many specimens as a page shows; the file holds all. */
    private static final int SHOWN = 100;

    private final FeedbackService feedback;
    private final PlanService plan;
    private final StreamedCsv files;

    FeedbackPages(FeedbackService feedback, PlanService plan, StreamedCsv files) {
        this.feedback = feedback;
        this.plan = plan;
        this.files = files;
    }

    @CheckedTemplate(basePath = "result/feedback")
    static class Templates {
        static native TemplateInstance feedback(
                FeedbackService.Rates rates,
                List<FeedbackQueries.Unsuitable> specimens,
                String next,
                List<Grouping> groupings,
                String season,
                List<SeasonView> seasons);
    }

    @GET
    @PermissionsAllowed(Act.UNSUITABLE_READ)
    public Response look(
            @QueryParam("by") String by,
            @QueryParam("season") @DefaultValue("") String season,
            @QueryParam("after") String after) {
        FeedbackService.Rates rates = feedback.rates(FeedbackService.grouping(by), season);
        Page<FeedbackQueries.Unsuitable> specimens = feedback.unsuitable(season, after, SHOWN);
        return Reply.ok(Templates.feedback(
                rates,
                specimens.items(),
                specimens.next(FeedbackService::mark),
                Arrays.asList(Grouping.values()),
                season,
                plan.seasons()));
    }

    @GET
    @Path("rates.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.UNSUITABLE_READ)
    public Response rates(@QueryParam("by") String by, @QueryParam("season") @DefaultValue("") String season) {
        return UnsuitableTissueResource.csv(feedback.rates(FeedbackService.grouping(by), season));
    }

    @GET
    @Path("specimens.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.UNSUITABLE_READ)
    public Response specimens(@QueryParam("season") @DefaultValue("") String season) {
        return files.<FeedbackQueries.Unsuitable>file(
                "specimens.csv",
                List.of(
                        "code",
                        "kit",
                        "station",
                        "takenOn",
                        "takenBy",
                        "tissue",
                        "side",
                        "preservation",
                        "condition",
                        "reason",
                        "reportedOn"),
                feedback.unsuitable(season),
                one -> new Object[] {
                    one.code(),
                    one.kit(),
                    one.station(),
                    one.takenOn(),
                    one.takenBy(),
                    one.tissue(),
                    one.side(),
                    one.preservation(),
                    one.condition(),
                    one.reason(),
                    one.reportedOn()
                });
    }
}
