package org.dentary.jaw;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.Clock;
import java.time.LocalDate;
import org.dentary.jaw.drawing.JawDrawing;
import org.dentary.jaw.drawing.JawDrawingSvg;
import org.dentary.jaw.drawing.JawDrawings;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;

/** The exam page, one question at a time, its drawings and the printed key. */
@Path("/")
public class JawKeyPages {
    private static final String SVG = "image/svg+xml";

    private final AgeingPlans plans;
    private final Clock clock;

    JawKeyPages(AgeingPlans plans, Clock clock) {
        this.plans = plans;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "jaw")
    static class Templates {
        static native TemplateInstance jawKey(JawExamView exam);
    }

    @GET
    @Path("jaw-key")
    @Produces(MediaType.TEXT_HTML)
    @PermissionsAllowed(Act.READ_COMMON)
    public TemplateInstance exam(@Context UriInfo address) {
        JawExam exam = JawExam.of(address.getQueryParameters());
        if (exam.diedOn() != null && exam.diedOn().isAfter(LocalDate.now(clock))) {
            throw InvalidInput.field(
                    "diedOn", "FUTURE", "diedOn is " + exam.diedOn() + ", which is still to come; check the date");
        }
        return Templates.jawKey(JawExamView.of(exam, plans.on(exam.diedOn(), null)));
    }

    /** The printed key: one Letter page, drawn anew each time. */
    @GET
    @Path("jaw-key.pdf")
    @Produces("application/pdf")
    @PermissionsAllowed(Act.READ_COMMON)
    public Response printed() {
        return Response.ok(JawKeySheet.pdf(plans.on(null, null)))
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
}
