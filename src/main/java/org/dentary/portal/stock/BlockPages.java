package org.dentary.portal.stock;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Validator;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Stream;
import org.dentary.codes.TypedText;
import org.dentary.codes.sheet.LabelStocks;
import org.dentary.kit.AccountForKits;
import org.dentary.kit.BlockService;
import org.dentary.kit.BlockView;
import org.dentary.kit.KitFate;
import org.dentary.kit.print.BlockPrinting;
import org.dentary.kit.print.LabelPrintService;
import org.dentary.kit.print.PrintParameters;
import org.dentary.kit.print.PrintingPlan;
import org.dentary.kit.print.StockView;
import org.dentary.plan.PlanService;
import org.dentary.plan.StationView;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.jboss.resteasy.reactive.RestForm;

/** One block of kits: how it adds up, printing it, and what became of its kits. */
@Path("/kits/{block: [0-9a-f-]{36}}")
@Produces(MediaType.TEXT_HTML)
public class BlockPages {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("MMM d, uuuu", Locale.US);
    private static final int PRINTINGS_SHOWN = 20;

    private final BlockService blocks;
    private final StockService stock;
    private final LabelPrintService prints;
    private final PlanService plan;
    private final Validator validator;

    BlockPages(
            BlockService blocks, StockService stock, LabelPrintService prints, PlanService plan, Validator validator) {
        this.blocks = blocks;
        this.stock = stock;
        this.prints = prints;
        this.plan = plan;
        this.validator = validator;
    }

    @CheckedTemplate(basePath = "portal")
    static class Templates {
        static native TemplateInstance block(
                BlockView block,
                String issuedOn,
                String zone,
                BlockTally tally,
                List<BlockPrinting> printings,
                UnusedForm form,
                Faults faults);

        static native TemplateInstance printing(
                BlockView block,
                PrintingForm form,
                PrintingPlan plan,
                boolean printedBefore,
                boolean changed,
                List<StockView> stocks,
                Faults faults);
    }

    /** What was typed of kits that were not used. */
    public record UnusedForm(String kits, String fate, String reason) {
        static final UnusedForm EMPTY = new UnusedForm("", KitFate.RETURNED.name(), "");
    }

    @GET
    @PermissionsAllowed(Act.LABEL_PRINT)
    public Response block(@PathParam("block") UUID id) {
        return Reply.ok(page(id, UnusedForm.EMPTY, Faults.NONE));
    }

    /** Kits that came back, were lost, or are there after all. */
    @POST
    @Path("unused")
    @PermissionsAllowed(Act.KIT_ISSUE)
    public Response unused(
            @PathParam("block") UUID id, @RestForm String kits, @RestForm String fate, @RestForm String reason) {
        UnusedForm form = new UnusedForm(
                kits == null ? "" : kits, fate == null ? "" : fate, reason == null ? "" : reason.strip());
        AccountForKits account = new AccountForKits(
                TypedText.several(form.kits()),
                Stream.of(KitFate.values())
                        .filter(f -> f.name().equals(fate))
                        .findFirst()
                        .orElse(null),
                form.reason());
        Faults faults = Faults.of(validator.validate(account));
        if (!faults.isAny()) {
            try {
                stock.account(id, account);
                return Response.seeOther(URI.create("/kits/" + id)).build();
            } catch (DomainException refusal) {
                faults = Faults.of(refusal);
            }
        }
        return Reply.page(422, page(id, form, faults));
    }

    /**
     * Counts what a choice takes; opens the sheets where it is the choice that was counted.
     *
     * @param copies {@code PART:NUMBER} each
     * @param counted the choice whose totals were shown, where the sheets are asked for
     */
    @GET
    @Path("printing")
    @PermissionsAllowed(Act.LABEL_PRINT)
    public Response printing(
            @PathParam("block") UUID id,
            @QueryParam("stock") String stock,
            @QueryParam("start") String start,
            @QueryParam("offsetX") String offsetX,
            @QueryParam("offsetY") String offsetY,
            @QueryParam("copies") List<String> copies,
            @QueryParam("reason") String reason,
            @QueryParam("counted") String counted,
            @QueryParam("open") boolean open) {
        BlockView block = blocks.block(id);
        BlockPrinting last =
                prints.printings(id, Long.MAX_VALUE, 1).stream().findFirst().orElse(null);
        PrintParameters asked = new PrintParameters();
        asked.stock =
                given(stock, last == null || LabelStocks.named(last.stock()).isEmpty() ? asked.stock : last.stock());
        asked.start = given(start, asked.start);
        asked.offsetX = given(offsetX, asked.offsetX);
        asked.offsetY = given(offsetY, asked.offsetY);
        PrintingForm form = PrintingForm.of(asked, copies, reason, block, last);
        try {
            PrintingPlan found = prints.plan(id, form.asked());
            boolean changed = open && !form.counted().equals(counted);
            if (open && last != null && form.reason().isEmpty()) {
                throw InvalidInput.field(
                        "reason", "REQUIRED", "The block was printed before; say why it is printed again");
            }
            return open && !changed
                    ? Response.seeOther(URI.create(form.href(block, "labels.pdf")))
                            .build()
                    : Reply.ok(Templates.printing(
                            block, form, found, last != null, changed, StockView.all(), Faults.NONE));
        } catch (DomainException refusal) {
            return Reply.page(
                    refusal.status(),
                    Templates.printing(block, form, null, last != null, false, StockView.all(), Faults.of(refusal)));
        }
    }

    private TemplateInstance page(UUID id, UnusedForm form, Faults faults) {
        BlockView block = blocks.block(id);
        StationView station = plan.station(block.station());
        return Templates.block(
                block,
                day(block, station),
                station.timeZone(),
                stock.tally(id),
                prints.printings(id, Long.MAX_VALUE, PRINTINGS_SHOWN),
                form,
                faults);
    }

    private static String given(String typed, String otherwise) {
        return typed == null || typed.isBlank() ? otherwise : typed.strip();
    }

    static String day(BlockView block, StationView station) {
        return DAY.format(block.issuedAt().atZone(station.zone()));
    }
}
