package org.dentary.portal.code;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.codes.symbol.Symbol;
import org.dentary.codes.symbol.SymbolImages;
import org.dentary.codes.symbol.Symbology;
import org.dentary.codes.symbol.Symbols;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** What a code is and where; its symbols; whether codes belong together. */
@Path("/api/v1/codes")
@Produces(MediaType.APPLICATION_JSON)
public class CodesResource {
    private static final int MOST_PIXELS = 37;
    private static final double MICROMETRES_IN_A_PIXEL = 25_400 / 96.0;
    private static final String SYMBOL = "code128, datamatrix or qr";
    private static final String MODULE = "Side of a module, 1 to 37 pixels";
    private static final String SIZES =
            "With its quiet zone Code 128 is 165 modules wide and 44 high, Data Matrix 20 by 20,"
                    + " QR 29 by 29. For a symbol that is held to a printer's dots print a label instead.";

    private final CodeService codes;

    CodesResource(CodeService codes) {
        this.codes = codes;
    }

    @GET
    @Path("{code: [^/.]+}")
    @PermissionsAllowed(Act.READ_COMMON)
    @Operation(summary = "What a code is, what it is bound to, where it is, and each time it was printed again")
    public Response read(@PathParam("code") String code) {
        return Reply.ok(codes.known(code));
    }

    @GET
    @Path("{code: [^/.]+}.png")
    @Produces("image/png")
    @PermissionsAllowed(Act.READ_COMMON)
    @Operation(summary = "The code's symbol as PNG, black on white with its quiet zone", description = SIZES)
    public byte[] png(
            @PathParam("code") String code,
            @Parameter(description = SYMBOL) @QueryParam("symbol") @DefaultValue("code128") String symbol,
            @Parameter(description = MODULE) @QueryParam("module") @DefaultValue("4") String module) {
        return SymbolImages.png(symbol(code, symbol), pixels(module));
    }

    @GET
    @Path("{code: [^/.]+}.svg")
    @Produces("image/svg+xml")
    @PermissionsAllowed(Act.READ_COMMON)
    @Operation(summary = "The code's symbol as SVG, black on white with its quiet zone", description = SIZES)
    public String svg(
            @PathParam("code") String code,
            @Parameter(description = SYMBOL) @QueryParam("symbol") @DefaultValue("code128") String symbol,
            @Parameter(description = MODULE + " of 1/96 inch") @QueryParam("module") @DefaultValue("4") String module) {
        return SymbolImages.svg(symbol(code, symbol), (int) Math.round(pixels(module) * MICROMETRES_IN_A_PIXEL));
    }

    @POST
    @Path("scan-back")
    @Consumes(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.READ_COMMON)
    @Operation(summary = "Whether labels scanned after one another, such as jar, bag and form, are one kit")
    public ScanBack scanBack(@NotNull @Valid ScanTogether scan) {
        return codes.scanBack(scan.codes());
    }

    private static Symbol symbol(String typed, String symbol) {
        Symbology symbology = Symbology.named(symbol)
                .orElseThrow(() -> InvalidInput.field(
                        "symbol",
                        "INVALID_VALUE",
                        "'" + symbol + "' is no symbol; allowed: "
                                + Arrays.stream(Symbology.values())
                                        .map(Symbology::word)
                                        .collect(Collectors.joining(", "))));
        try {
            return Symbols.of(symbology, LabelCode.parse(typed));
        } catch (NotACode fault) {
            throw InvalidInput.field("code", "NOT_A_CODE", fault.getMessage());
        }
    }

    private static int pixels(String module) {
        if (module.matches("[0-9]{1,2}")) {
            int pixels = Integer.parseInt(module);
            if (pixels >= 1 && pixels <= MOST_PIXELS) {
                return pixels;
            }
        }
        throw InvalidInput.field(
                "module",
                "INVALID_VALUE",
                "'" + module + "' is not 1 to " + MOST_PIXELS + " pixels; give a whole number");
    }
}
