package org.dentary.calculators.proportion;

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
import org.dentary.statistics.IntervalMethod;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** How common is it, as JSON. */
@Path("/api/v1/statistics")
@Produces(MediaType.APPLICATION_JSON)
@PermissionsAllowed(Act.READ_COMMON)
@Tag(name = "Calculators")
public class ProportionResource {

    @GET
    @Path("proportion")
    @Operation(summary = "One proportion with its interval")
    @Parameter(
            name = "detected",
            in = ParameterIn.QUERY,
            required = true,
            description = "Animals detected, 0 to tested",
            example = "6",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "tested",
            in = ParameterIn.QUERY,
            required = true,
            description = "Animals tested with a definite result",
            example = "148",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "interval",
            in = ParameterIn.QUERY,
            description = "Method of the interval, WILSON when absent",
            example = "WILSON",
            schema = @Schema(implementation = IntervalMethod.class))
    @Parameter(
            name = "confidence",
            in = ParameterIn.QUERY,
            description = "Two-sided level as a fraction, 0.95 when absent",
            example = "0.95",
            schema = @Schema(type = SchemaType.NUMBER))
    public ProportionView proportion(@Parameter(hidden = true) @Context UriInfo address) {
        return ProportionView.of(ProportionCalculator.compute(Asked.of(address)));
    }

    @GET
    @Path("true-prevalence")
    @Operation(
            summary = "The true prevalence behind an apparent one",
            description =
                    "Give sensitivity (and specificity) where they are known, or the four counts of a validation study where they are estimated; not both.")
    @Parameter(
            name = "detected",
            in = ParameterIn.QUERY,
            required = true,
            description = "Animals detected, 0 to tested",
            example = "23",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "tested",
            in = ParameterIn.QUERY,
            required = true,
            description = "Animals tested with a definite result",
            example = "150",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "sensitivity",
            in = ParameterIn.QUERY,
            description = "Known sensitivity, 0 to 1",
            example = "0.96",
            schema = @Schema(type = SchemaType.NUMBER))
    @Parameter(
            name = "specificity",
            in = ParameterIn.QUERY,
            description = "Known specificity, 0 to 1; 1 when absent",
            example = "0.89",
            schema = @Schema(type = SchemaType.NUMBER))
    @Parameter(
            name = "truePositives",
            in = ParameterIn.QUERY,
            description = "Infected animals that the test detected, of infected",
            example = "90",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "infected",
            in = ParameterIn.QUERY,
            description = "Infected animals in the validation study",
            example = "100",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "trueNegatives",
            in = ParameterIn.QUERY,
            description = "Uninfected animals in which the test detected nothing, of uninfected",
            example = "196",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "uninfected",
            in = ParameterIn.QUERY,
            description = "Uninfected animals in the validation study",
            example = "200",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "confidence",
            in = ParameterIn.QUERY,
            description = "Two-sided level as a fraction, 0.95 when absent",
            example = "0.95",
            schema = @Schema(type = SchemaType.NUMBER))
    public TruePrevalenceView truePrevalence(@Parameter(hidden = true) @Context UriInfo address) {
        Asked asked = Asked.of(address);
        return TruePrevalenceView.of(TruePrevalenceCalculator.compute(asked), asked.confidence());
    }

    @POST
    @Path("standardised")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Prevalence standardised directly to a reference herd")
    public StandardisedView standardised(@NotNull @Valid Standardise asked) {
        return StandardisedView.of(asked.compute(), asked.level());
    }

    @POST
    @Path("smoothing")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Small areas raw and smoothed")
    public SmoothingView smoothing(@NotNull @Valid Smooth asked) {
        return SmoothingView.of(asked.compute(), asked.level());
    }
}
