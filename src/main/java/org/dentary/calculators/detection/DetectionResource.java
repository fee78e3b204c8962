package org.dentary.calculators.detection;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import org.dentary.calculators.Asked;
import org.dentary.platform.account.Act;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What can be ruled out, as JSON. */
@Path("/api/v1/statistics")
@Produces(MediaType.APPLICATION_JSON)
@PermissionsAllowed(Act.READ_COMMON)
@Tag(name = "Calculators")
public class DetectionResource {

    @GET
    @Path("sample-size")
    @Operation(
            summary = "How many to test so that an infected herd is found out",
            description = "Give infected or designPrevalence, not both.")
    @Parameter(
            name = "population",
            in = ParameterIn.QUERY,
            required = true,
            description = "Animals in the herd",
            example = "100",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "infected",
            in = ParameterIn.QUERY,
            description = "Infected animals to be detected, 1 or more",
            example = "5",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "designPrevalence",
            in = ParameterIn.QUERY,
            description = "Instead of infected: a fraction; times population, rounded down, at least 1",
            example = "0.05",
            schema = @Schema(type = SchemaType.NUMBER))
    @Parameter(
            name = "sensitivity",
            in = ParameterIn.QUERY,
            required = true,
            description = "Sensitivity of the test, above 0 and up to 1",
            example = "1",
            schema = @Schema(type = SchemaType.NUMBER))
    @Parameter(
            name = "confidence",
            in = ParameterIn.QUERY,
            description = "Chance of detection wanted, 0.95 when absent",
            example = "0.95",
            schema = @Schema(type = SchemaType.NUMBER))
    public SampleSizeView sampleSize(@Parameter(hidden = true) @Context UriInfo address) {
        Asked asked = Asked.of(address);
        return SampleSizeView.of(SampleSizeCalculator.compute(asked), asked.confidence());
    }

    @GET
    @Path("detection-probability")
    @Operation(
            summary = "What a sample from one herd can be expected to show",
            description = "Give infected or designPrevalence, not both.")
    @Parameter(
            name = "population",
            in = ParameterIn.QUERY,
            required = true,
            description = "Animals in the herd",
            example = "100",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "infected",
            in = ParameterIn.QUERY,
            description = "Infected animals in it, 0 or more",
            example = "5",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "designPrevalence",
            in = ParameterIn.QUERY,
            description = "Instead of infected: a fraction; times population, rounded down, at least 1",
            example = "0.05",
            schema = @Schema(type = SchemaType.NUMBER))
    @Parameter(
            name = "tested",
            in = ParameterIn.QUERY,
            required = true,
            description = "Animals tested, 0 to population",
            example = "45",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "sensitivity",
            in = ParameterIn.QUERY,
            required = true,
            description = "Sensitivity of the test, 0 to 1",
            example = "1",
            schema = @Schema(type = SchemaType.NUMBER))
    @Parameter(
            name = "specificity",
            in = ParameterIn.QUERY,
            description = "Specificity of the test, 0 to 1; 1 when absent",
            example = "1",
            schema = @Schema(type = SchemaType.NUMBER))
    public DetectionView detectionProbability(@Parameter(hidden = true) @Context UriInfo address) {
        return DetectionView.of(DetectionCalculator.compute(Asked.of(address)));
    }

    @POST
    @Path("freedom")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Probability that prevalence is below the design prevalence, over periods")
    public FreedomView freedom(@NotNull @Valid FollowPeriods asked) {
        return FreedomView.of(asked.compute());
    }

    @POST
    @Path("weighted-points")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Risk-weighted points earned and needed before first detection")
    public WeightedPointsView weightedPoints(@NotNull @Valid CountPoints asked) {
        return WeightedPointsView.of(asked.compute(), asked.level());
    }
}
