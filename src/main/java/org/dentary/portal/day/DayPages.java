package org.dentary.portal.day;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.dentary.plan.StationView;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;

/** The end of the day: what was taken in, what is missing by name, and whether the jars on the table are those recorded. */
@Path("/day")
@Produces(MediaType.TEXT_HTML)
public class DayPages {
    /** So that the count of the jars stays in reach of a thumb. */
    private static final int FIRST = 25;

    private final DayService days;

    DayPages(DayService days) {
        this.days = days;
    }

    @CheckedTemplate(basePath = "portal")
    static class Templates {
        static native TemplateInstance day(
                StationDay day,
                List<DayGap> gaps,
                List<StationView> stations,
                String scanned,
                JarCount count,
                Faults faults);
    }

    @GET
    @PermissionsAllowed(Act.SPECIMEN_WRITE)
    public Response day(
            @QueryParam("station") String station,
            @QueryParam("date") String date,
            @QueryParam("all") @DefaultValue("false") boolean all) {
        StationDay day = days.day(station, date);
        return show(200, day, all ? day.gaps() : first(day), "", null, Faults.NONE);
    }

    /** Holds what was scanned against the day; records nothing. */
    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.SPECIMEN_WRITE)
    public Response count(
            @FormParam("station") String station, @FormParam("date") String date, @FormParam("codes") String codes) {
        StationDay day = days.day(station, date);
        try {
            return show(200, day, first(day), "", days.count(station, date, codes), Faults.NONE);
        } catch (InvalidInput refusal) {
            return show(422, day, first(day), codes == null ? "" : codes, null, Faults.of(refusal));
        }
    }

    private static List<DayGap> first(StationDay day) {
        return day.gaps().subList(0, Math.min(FIRST, day.gaps().size()));
    }

    private Response show(
            int status, StationDay day, List<DayGap> gaps, String scanned, JarCount count, Faults faults) {
        return Reply.page(status, Templates.day(day, gaps, days.stations(), scanned, count, faults));
    }
}
