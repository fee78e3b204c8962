package org.dentary.calculators.comparison;

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

/** Is it different, as JSON. */
@Path("/api/v1/statistics")
@Produces(MediaType.APPLICATION_JSON)
@PermissionsAllowed(Act.READ_COMMON)
@Tag(name = "Calculators")
public class ComparisonResource {

    @GET
    @Path("two-proportions")
    @Operation(summary = "Two proportions compared")
    @Parameter(
            name = "detected1",
            in = ParameterIn.QUERY,
            required = true,
            description = "Detected in the first group",
            example = "56",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "tested1",
            in = ParameterIn.QUERY,
            required = true,
            description = "Tested in the first group",
            example = "70",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "detected2",
            in = ParameterIn.QUERY,
            required = true,
            description = "Detected in the second group",
            example = "48",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "tested2",
            in = ParameterIn.QUERY,
            required = true,
            description = "Tested in the second group",
            example = "80",
            schema = @Schema(type = SchemaType.INTEGER))
    @Parameter(
            name = "confidence",
            in = ParameterIn.QUERY,
            description = "Two-sided level as a fraction, 0.95 when absent",
            example = "0.95",
            schema = @Schema(type = SchemaType.NUMBER))
    public TwoProportionsView twoProportions(@Parameter(hidden = true) @Context UriInfo address) {
        Asked asked = Asked.of(address);
        return TwoProportionsView.of(TwoProportionsCalculator.compute(asked), asked.confidence());
    }

    @POST
    @Path("stratified")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Two groups compared within strata and pooled")
    public StratifiedView stratified(@NotNull @Valid PoolStrata asked) {
        return StratifiedView.of(asked.compute(), asked.level());
    }

    @POST
    @Path("trend")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Trend over scored groups, and what it leaves unexplained")
    public TrendView trend(@NotNull @Valid FindTrend asked) {
        return TrendView.of(asked.compute());
    }

    @POST
    @Path("agreement")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Agreement of two readers of the same animals")
    public AgreementView agreement(@NotNull @Valid CompareReaders asked) {
        return AgreementView.of(asked.compute(), asked.level());
    }
}
