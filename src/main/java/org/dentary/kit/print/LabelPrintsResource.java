package org.dentary.kit.print;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.io.OutputStream;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import org.dentary.codes.sheet.LabelSheet;
import org.dentary.kit.LabelService;
import org.dentary.kit.ReprintLabel;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.ETags;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;
import org.dentary.platform.table.KeysetPage;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** Labels on paper: sheets of a block, its cover, one label again, and what they can be printed on. */
@Path("/api/v1")
public class LabelPrintsResource {
    private static final String PDF = "application/pdf";

    private final LabelPrintService prints;
    private final LabelService labels;

    LabelPrintsResource(LabelPrintService prints, LabelService labels) {
        this.prints = prints;
        this.labels = labels;
    }

    @GET
    @Path("label-stocks")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.READ_COMMON)
    public ItemList<StockView> stocks() {
        return new ItemList<>(StockView.all());
    }

    /** A page that shows how far printer and stock are apart. */
    @GET
    @Path("label-stocks/{stock}/calibration.pdf")
    @Produces(PDF)
    @PermissionsAllowed(Act.LABEL_PRINT)
    public Response calibration(
            @PathParam("stock") String stock,
            @QueryParam("offsetX") @DefaultValue("0") String offsetX,
            @QueryParam("offsetY") @DefaultValue("0") String offsetY) {
        Printing printing = Printing.of(stock, "1", offsetX, offsetY);
        LabelSheet sheet = LabelSheet.on(printing.stock());
        return pdf("calibration-" + stock, out -> sheet.writeCalibration(printing.run(), out));
    }

    /** The label sheets of a block, streamed. */
    @GET
    @Path("kit-blocks/{id}/labels.pdf")
    @Produces(PDF)
    @PermissionsAllowed(Act.LABEL_PRINT)
    @Operation(
            summary = "The label sheets of a block as PDF, streamed; the trail keeps what was printed",
            description = "Ask first for what it takes at /api/v1/kit-blocks/{id}/printing-plan with the same values.")
    public Response sheets(
            @PathParam("id") UUID id,
            @BeanParam PrintParameters asked,
            @Parameter(description = "Why the block is printed again") @QueryParam("reason") String reason) {
        return pdf("labels-" + id, prints.sheets(id, asked, reason));
    }

    @GET
    @Path("kit-blocks/{id}/printing-plan")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.LABEL_PRINT)
    @Operation(summary = "What a printing takes: labels of each part and in all, sheets, where they do not last")
    public PrintingPlan plan(@PathParam("id") UUID id, @BeanParam PrintParameters asked) {
        return prints.plan(id, asked);
    }

    @GET
    @Path("kit-blocks/{id}/printings")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.LABEL_PRINT)
    @Operation(summary = "The printings of a block made so far, newest first")
    public Response printings(
            @PathParam("id") UUID id,
            @QueryParam("before") Long before,
            @QueryParam("limit") Integer limit,
            @Context UriInfo address) {
        int most = KeysetPage.limit(limit);
        List<BlockPrinting> rows = prints.printings(id, before == null ? Long.MAX_VALUE : before, most + 1);
        return KeysetPage.answer(rows, most, address, "before", last -> String.valueOf(last.number()));
    }

    @GET
    @Path("kit-blocks/{id}/printings.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.LABEL_PRINT)
    @Operation(summary = "The printings of a block as CSV, streamed")
    public StreamingOutput printingsCsv(@PathParam("id") UUID id) {
        prints.printings(id, Long.MAX_VALUE, 1);
        return out -> {
            try (CsvTable csv = CsvTable.on(
                    out, List.of("printedAt", "printedBy", "stock", "copies", "start", "labels", "sheets", "reason"))) {
                prints.printings(
                        id,
                        one -> csv.row(
                                one.printedAt(),
                                one.printedBy(),
                                one.stock(),
                                one.copies(),
                                one.start(),
                                one.labels(),
                                one.sheets(),
                                one.reason()));
            }
        };
    }

    @GET
    @Path("kit-blocks/{id}/cover.pdf")
    @Produces(PDF)
    @PermissionsAllowed(Act.LABEL_PRINT)
    @Operation(summary = "The page that travels with a printing: what it is, how to label, cautions")
    public Response cover(@PathParam("id") UUID id, @BeanParam PrintParameters asked) {
        return pdf("cover-" + id, prints.cover(id, asked));
    }

    /** Keeps that a label is printed again and why; fetch the print under the same address with {@code .pdf}. */
    @PUT
    @Path("labels/{code}/reprints/{id: [0-9A-Fa-f-]{36}}")
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.LABEL_PRINT)
    public Response reprint(
            @PathParam("code") String code, @PathParam("id") UUID id, @NotNull @Valid ReprintLabel reprint) {
        LabelService.Reprinted reprinted = labels.reprint(code, id, reprint);
        return Response.status(reprinted.created() ? 201 : 200)
                .entity(reprinted.reprint())
                .header(HttpHeaders.ETAG, ETags.of(0))
                .build();
    }

    @GET
    @Path("labels/{code}/reprints/{id: [0-9A-Fa-f-]{36}}.pdf")
    @Produces(PDF)
    @PermissionsAllowed(Act.LABEL_PRINT)
    public Response reprint(
            @PathParam("code") String code,
            @PathParam("id") UUID id,
            @QueryParam("start") @DefaultValue("1") String start,
            @QueryParam("offsetX") @DefaultValue("0") String offsetX,
            @QueryParam("offsetY") @DefaultValue("0") String offsetY) {
        return pdf("label-" + code, prints.reprint(code, id, start, offsetX, offsetY));
    }

    private static Response pdf(String name, Consumer<OutputStream> writer) {
        StreamingOutput body = writer::accept;
        return Response.ok(body, PDF)
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"" + name + ".pdf\"")
                .build();
    }
}
