package org.dentary.prevalence.pictures;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.dentary.platform.account.Act;
import org.dentary.platform.table.CsvTable;
import org.dentary.prevalence.chart.PrevalenceChart.Use;
import org.dentary.prevalence.cut.Superseded;
import org.dentary.prevalence.detection.ChanceService;
import org.dentary.prevalence.question.ReportQuestion;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** The pictures of a season as SVG and PNG, and what they are made from as CSV. */
@Path("/api/v1")
@PermissionsAllowed(Act.REPORT_READ)
public class PicturesResource {
    private final PictureService pictures;
    private final ChanceService chances;

    PicturesResource(PictureService pictures, ChanceService chances) {
        this.pictures = pictures;
        this.chances = chances;
    }

    @GET
    @Path("pictures/{picture}.svg")
    @Produces("image/svg+xml")
    @Operation(
            summary = "A picture of the season as SVG, black on white",
            description =
                    "classes, map, progress, weeks, seasons or turnaround; filters, scope and cut as in the chance of detection.")
    @Parameter(name = "season", in = ParameterIn.QUERY, required = true, example = "2026")
    @Parameter(name = "shade", in = ParameterIn.QUERY, description = "of the map: tested, detected or chance")
    public Response svg(@PathParam("picture") String name, @Context UriInfo address) {
        return answer(name, address, picture -> picture.svg(Use.FILE), "image/svg+xml")
                .build();
    }

    @GET
    @Path("pictures/{picture}.png")
    @Produces("image/png")
    @Operation(
            summary = "The same picture as PNG, black on white, at twice the size of the screen's",
            description = "Its title and its figures in words are in the file's text chunks Title and Description.")
    @Parameter(name = "season", in = ParameterIn.QUERY, required = true, example = "2026")
    @Parameter(name = "shade", in = ParameterIn.QUERY, description = "of the map: tested, detected or chance")
    public Response png(@PathParam("picture") String name, @Context UriInfo address) {
        return answer(name, address, Picture::png, "image/png").build();
    }

    @GET
    @Path("pictures/{picture}.csv")
    @Produces("text/csv")
    @Operation(summary = "What a picture is made from, as CSV")
    @Parameter(name = "season", in = ParameterIn.QUERY, required = true, example = "2026")
    public Response csv(@PathParam("picture") String name, @Context UriInfo address) {
        return answer(name, address, Picture::csv, CsvTable.MEDIA_TYPE)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + ".csv\"")
                .build();
    }

    /** Takes the map's shading out of the parameters. */
    static Shading shading(Map<String, List<String>> parameters) {
        List<String> given = parameters.remove("shade");
        return Shading.of(
                given == null || given.get(0).isBlank() ? null : given.get(0).trim());
    }

    private Response.ResponseBuilder answer(
            String name, UriInfo address, Function<Picture, Object> form, String mediaType) {
        Map<String, List<String>> parameters = new LinkedHashMap<>(address.getQueryParameters());
        Shading shading = shading(parameters);
        ReportQuestion question = chances.question(parameters);
        return Superseded.on(
                Response.ok(form.apply(pictures.one(name, question, shading)), mediaType),
                pictures.superseded(question));
    }
}
