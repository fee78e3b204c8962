package org.dentary.prevalence.comparison;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import org.dentary.platform.account.Act;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.cut.Superseded;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;

/** Comparisons as JSON and CSV, and the herd structures that they can be standardised to. */
@Path("/api/v1")
public class ComparisonsResource {
    private final ComparisonService comparisons;
    private final HerdQueries herds;

    ComparisonsResource(ComparisonService comparisons, HerdQueries herds) {
        this.comparisons = comparisons;
        this.herds = herds;
    }

    @GET
    @Path("comparisons")
    @Produces({MediaType.APPLICATION_JSON, "text/csv"})
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(
            summary = "Sexes, age classes and seasons compared",
            description =
                    "On the animals that the prevalence report counts: sexes within age class, sexes adjusted for age class, age"
                            + " classes adjusted for sex, the trend with age where mean ages are stated, and with another season as"
                            + " counted, adjusted, and standardized to a herd. Takes the filters of /api/v1/prevalence except by,"
                            + " ageClass and sex. \"Not shown\" never says that there is no difference.")
    @Parameter(name = "season", in = ParameterIn.QUERY, required = true, example = "SY2026")
    @Parameter(name = "disease", in = ParameterIn.QUERY)
    @Parameter(name = "species", in = ParameterIn.QUERY)
    @Parameter(name = "unit", in = ParameterIn.QUERY)
    @Parameter(name = "cut", in = ParameterIn.QUERY, description = "id of a data cut")
    @Parameter(
            name = "with",
            in = ParameterIn.QUERY,
            description = "another season, or the id of a data cut of one; with a cut it has to be a cut",
            example = "SY2025")
    @Parameter(name = "herd", in = ParameterIn.QUERY, description = "a herd structure", example = "SPRING_2026")
    @Parameter(name = "ageFawn", in = ParameterIn.QUERY, description = "mean age of fawns, years", example = "0.5")
    @Parameter(name = "ageYearling", in = ParameterIn.QUERY, example = "1.5")
    @Parameter(name = "ageAdult", in = ParameterIn.QUERY, example = "3.8")
    @Parameter(name = "confidence", in = ParameterIn.QUERY, example = "0.95")
    @APIResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = Comparisons.class)))
    public Response compare(@Context UriInfo address, @Context HttpHeaders headers) {
        if (CsvTable.isAsked(headers)) {
            return csv(address);
        }
        ComparisonService.Settled asked = settled(address);
        return answer(comparisons.json(asked), MediaType.APPLICATION_JSON, asked);
    }

    @GET
    @Path("comparisons.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.REPORT_READ)
    @Operation(summary = "The comparisons as CSV, one line each")
    public Response csv(@Context UriInfo address) {
        ComparisonService.Settled asked = settled(address);
        return Response.fromResponse(answer(comparisons.csv(asked), CsvTable.MEDIA_TYPE, asked))
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "attachment; filename=\"comparisons-" + asked.here().season() + ".csv\"")
                .build();
    }

    @GET
    @Path("herd-structures")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.READ_COMMON)
    @Operation(summary = "Herds that prevalence can be standardized to, each with its day and source")
    public ItemList<HerdStructure> herds() {
        return new ItemList<>(herds.all());
    }

    private ComparisonService.Settled settled(UriInfo address) {
        return comparisons.settle(ComparisonQuestion.of(address.getQueryParameters()));
    }

    private Response answer(String body, String mediaType, ComparisonService.Settled asked) {
        return Superseded.on(
                        Response.ok(body, mediaType),
                        comparisons.superseded(asked.here()),
                        comparisons.superseded(asked.other()))
                .header("Digest-SHA-256", StoredAnswerService.digest(body))
                .build();
    }
}
