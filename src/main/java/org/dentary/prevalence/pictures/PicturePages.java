package org.dentary.prevalence.pictures;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.RawString;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.DomainException;
import org.dentary.prevalence.chart.PrevalenceChart.Use;
import org.dentary.prevalence.detection.ChanceService;
import org.dentary.prevalence.question.Choice;
import org.dentary.prevalence.question.QuestionForm;
import org.dentary.prevalence.question.QuestionForms;
import org.dentary.prevalence.question.ReportQuestion;

/** The pictures of a season on one page, each with its table. */
@Path("/pictures")
@PermissionsAllowed(Act.REPORT_READ)
public class PicturePages {
    private final PictureService pictures;
    private final ChanceService chances;
    private final QuestionForms forms;

    PicturePages(PictureService pictures, ChanceService chances, QuestionForms forms) {
        this.pictures = pictures;
        this.chances = chances;
        this.forms = forms;
    }

    @CheckedTemplate(basePath = "prevalence")
    static class Templates {
        static native TemplateInstance pictures(
                QuestionForm form, List<Choice> shadings, String standsOn, List<Hung> pictures, String fault);
    }

    /** A picture on the page, for a wide and a narrow screen. */
    record Hung(Picture picture, RawString wide, RawString narrow, List<List<Picture.Shown>> rows) {
        static Hung of(Picture picture) {
            return new Hung(
                    picture,
                    new RawString(picture.svg(Use.PAGE)),
                    new RawString(picture.svg(Use.NARROW_PAGE)),
                    picture.shown());
        }
    }

    @GET
    @Produces(MediaType.TEXT_HTML)
    public Response page(@Context UriInfo address) {
        Map<String, List<String>> asked = forms.asked(address.getQueryParameters());
        QuestionForm form = forms.of(asked);
        Map<String, List<String>> parameters = new LinkedHashMap<>(asked);
        Shading shading = Shading.TESTED;
        try {
            shading = PicturesResource.shading(parameters);
            if (!asked.containsKey("season")) {
                return page(200, form, shading, null, List.of(), "No season is set up yet.");
            }
            ReportQuestion question = chances.question(parameters);
            return page(
                    200,
                    form,
                    shading,
                    pictures.standsOn(question),
                    pictures.all(question, shading).stream().map(Hung::of).toList(),
                    null);
        } catch (DomainException fault) {
            return page(fault.status(), form, shading, null, List.of(), fault.getMessage());
        }
    }

    private static Response page(
            int status, QuestionForm form, Shading shading, String standsOn, List<Hung> pictures, String fault) {
        List<Choice> shadings = Arrays.stream(Shading.values())
                .map(s -> new Choice(
                        s.word(),
                        Character.toUpperCase(s.words().charAt(0)) + s.words().substring(1),
                        s == shading))
                .toList();
        return Response.status(status)
                .entity(Templates.pictures(form, shadings, standsOn, pictures, fault))
                .build();
    }
}
