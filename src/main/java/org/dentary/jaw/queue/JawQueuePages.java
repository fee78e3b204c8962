package org.dentary.jaw.queue;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.dentary.plan.PlanService;
import org.dentary.plan.StationView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.account.Act;

/** The queue of jaws: to read, to read again, to decide. */
@Path("/jaws")
@Produces(MediaType.TEXT_HTML)
public class JawQueuePages {
    /** As many of each kind as a phone is scrolled through. */
    private static final int AT_FIRST = 25;

    private final JawQueueService jaws;
    private final PlanService plan;

    JawQueuePages(JawQueueService jaws, PlanService plan) {
        this.jaws = jaws;
        this.plan = plan;
    }

    @CheckedTemplate(basePath = "jaw")
    static class Templates {
        static native TemplateInstance queue(
                List<JawTask> read,
                List<JawTask> again,
                List<JawTask> decide,
                List<QueueSize> sizes,
                boolean onlyOldest,
                int shown,
                boolean probableToo,
                List<StationView> stations,
                String station);
    }

    @GET
    @PermissionsAllowed(Act.ANIMAL_READ)
    public TemplateInstance queue(@QueryParam("station") String station, @QueryParam("all") boolean whole) {
        String one = station == null || station.isBlank() ? null : station.trim();
        int shown = whole ? JawQueueService.MOST : AT_FIRST;
        List<JawTask> all = jaws.queue(one, null, shown + 1);
        List<QueueSize> sizes = jaws.sizes(one);
        return Templates.queue(
                of(all, "READ"),
                of(all, "READ_AGAIN"),
                of(all, "DECIDE"),
                sizes,
                whole && sizes.stream().anyMatch(size -> size.jaws() > shown),
                shown,
                plan.settings().isSet(PlanSetting.PROBABLE_NEEDS_SECOND_READER, null, null, null),
                plan.stations(),
                one == null ? "" : one);
    }

    private static List<JawTask> of(List<JawTask> all, String task) {
        return all.stream().filter(each -> each.task().equals(task)).toList();
    }
}
