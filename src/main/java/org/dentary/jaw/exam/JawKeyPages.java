package org.dentary.jaw.exam;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.Clock;
import java.util.List;
import java.util.stream.Stream;
import org.dentary.cautions.CautionService;
import org.dentary.cautions.CautionView;
import org.dentary.cautions.Hazard;
import org.dentary.jaw.AgeingPlans;
import org.dentary.jaw.drawing.JawDrawing;
import org.dentary.jaw.drawing.JawDrawingSvg;
import org.dentary.jaw.drawing.JawDrawings;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.plan.RegionView;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;

/** The exam page, one question at a time, its drawings and the printed key. */
@Path("/")
public class JawKeyPages {
    private static final String SVG = "image/svg+xml";

    private final AgeingPlans plans;
    private final CautionService cautions;
    private final PlanService plan;
    private final PlanClock planClock;
    private final Clock clock;

    JawKeyPages(AgeingPlans plans, CautionService cautions, PlanService plan, PlanClock planClock, Clock clock) {
        this.plans = plans;
        this.cautions = cautions;
        this.plan = plan;
        this.planClock = planClock;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "jaw")
    static class Templates {
        static native TemplateInstance jawKey(JawExamView exam, List<RegionView> regions);
    }

    @GET
    @Path("jaw-key")
    @Produces(MediaType.TEXT_HTML)
    @PermissionsAllowed(Act.READ_COMMON)
    public TemplateInstance exam(@Context UriInfo address) {
        JawExam exam = JawExam.of(address.getQueryParameters());
        if (exam.diedOn() != null && exam.diedOn().isAfter(planClock.day(clock.instant()))) {
            throw InvalidInput.field(
                    "diedOn", "FUTURE", "diedOn is " + exam.diedOn() + ", which is still to come; check the date");
        }
        requireKnown(exam.region());
        return Templates.jawKey(JawExamView.of(exam, plans.on(exam.diedOn(), exam.region())), plan.regions());
    }

    private void requireKnown(String region) {
        List<String> codes = plan.regions().stream().map(RegionView::code).toList();
        if (region != null && !codes.contains(region)) {
            throw InvalidInput.field(
                    "region",
                    "REGION_UNKNOWN",
                    "'" + region + "' is no region of the plan; allowed: " + String.join(", ", codes));
        }
    }

    /**
     * The printed key: one Letter page, drawn anew each time.
     *
     * @param region region whose dates it names; those of everywhere when left out
     */
    @GET
    @Path("jaw-key.pdf")
    @Produces("application/pdf")
    @PermissionsAllowed(Act.READ_COMMON)
    public Response printed(@QueryParam("region") String region) {
        String one = region == null || region.isBlank() ? null : region.trim();
        requireKnown(one);
        return Response.ok(JawKeySheet.pdf(plans.on(null, one), cautions()))
                .header("Content-Disposition", "inline; filename=\"jaw-key.pdf\"")
                .build();
    }

    /** All drawings in one file; a page shows one by its name after the number sign. */
    @GET
    @Path("jaw-drawings.svg")
    @Produces(SVG)
    @PermitAll
    public Response drawings() {
        return Response.ok(JawDrawingSvg.sheet())
                .header("Cache-Control", "public, max-age=3600")
                .build();
    }

    /** One drawing as a file of its own. */
    @GET
    @Path("jaw-drawings/{name}.svg")
    @Produces(SVG)
    @PermitAll
    public Response drawing(@PathParam("name") String name) {
        JawDrawing drawing = JawDrawings.find(name)
                .orElseThrow(() -> new NotFound(
                        "DRAWING_UNKNOWN",
                        "No drawing '" + name + "'; there are "
                                + String.join(
                                        ", ",
                                        JawDrawings.all().stream()
                                                .map(JawDrawing::name)
                                                .toList())));
        return Response.ok(JawDrawingSvg.file(drawing))
                .header("Cache-Control", "public, max-age=3600")
                .build();
    }

    /** What is shown where jaws are handled, without what concerns formalin, labels or one disease alone. */
    private List<CautionView> cautions() {
        return Stream.of(Hazard.AGEING, Hazard.CLINICAL_SIGNS, Hazard.SAMPLING)
                .flatMap(hazard -> cautions.at(hazard).stream())
                .filter(caution -> caution.disease() == null)
                .filter(caution -> !caution.hazards().contains(Hazard.FORMALIN.name()))
                .filter(caution -> !caution.hazards().contains(Hazard.LABELING.name()))
                .distinct()
                .toList();
    }
}
