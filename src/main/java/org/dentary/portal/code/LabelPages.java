package org.dentary.portal.code;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.dentary.codes.Part;
import org.dentary.codes.sheet.LabelStock;
import org.dentary.codes.sheet.LabelStocks;
import org.dentary.kit.LabelService;
import org.dentary.kit.LabelView;
import org.dentary.kit.ReprintLabel;
import org.dentary.kit.ReprintView;
import org.dentary.kit.VoidLabel;
import org.dentary.kit.chain.LabelHistory;
import org.dentary.kit.chain.LabelHistoryService;
import org.dentary.kit.print.StockAdvice;
import org.dentary.kit.print.StockView;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.jboss.resteasy.reactive.RestForm;

/** A single label, and labels held against each other after labeling. */
@Path("/kits")
@Produces(MediaType.TEXT_HTML)
public class LabelPages {
    private static final int LONGEST_REASON = 2000;

    private final CodeService codes;
    private final LabelService labels;
    private final LabelHistoryService histories;
    private final PlanService plan;

    LabelPages(CodeService codes, LabelService labels, LabelHistoryService histories, PlanService plan) {
        this.codes = codes;
        this.labels = labels;
        this.histories = histories;
        this.plan = plan;
    }

    @CheckedTemplate(basePath = "portal")
    static class Templates {
        static native TemplateInstance label(
                CodeView label,
                String station,
                String season,
                LabelHistory history,
                List<Reprint> reprints,
                List<StockView> stocks,
                LabelForm form,
                Faults faults);

        static native TemplateInstance scanBack(List<LabelView> scanned, ScanBack same, Faults faults);
    }

    /**
     * One time that the label was printed again.
     *
     * @param onASheet labels on a sheet of its stock, 1 for a roll
     * @param cautions where it does not last
     */
    public record Reprint(ReprintView print, int onASheet, List<String> cautions) {
        static Reprint of(ReprintView print, CodeView label) {
            LabelStock stock = LabelStocks.named(print.stock()).orElse(null);
            return stock == null
                    ? new Reprint(print, 1, List.of())
                    : new Reprint(
                            print,
                            stock.labelsOnAPage(),
                            StockAdvice.cautions(stock, List.of(Part.valueOf(label.part()))));
        }
    }

    /**
     * What was typed at a label's page.
     *
     * @param id made when the form was shown, so that sending it twice prints once
     * @param stock of the print; empty where none was chosen
     * @param reprintReason why it is printed again
     * @param reason why it is voided
     */
    public record LabelForm(String id, String stock, String reprintReason, String reason) {
        static LabelForm fresh() {
            return new LabelForm(UUID.randomUUID().toString(), "", "", "");
        }
    }

    @GET
    @Path("labels/{code}")
    @PermissionsAllowed(Act.READ_COMMON)
    public TemplateInstance label(@PathParam("code") String code) {
        return page(code, LabelForm.fresh(), Faults.NONE);
    }

    @POST
    @Path("labels/{code}/voiding")
    @PermissionsAllowed(Act.KIT_ISSUE)
    public Response voidLabel(@PathParam("code") String code, @RestForm String reason) {
        LabelForm form = new LabelForm(UUID.randomUUID().toString(), "", "", text(reason));
        return change(code, form, () -> codes.voidLabel(code, new VoidLabel(required("reason", reason))));
    }

    /** Prints the label again: keeps why, then shows the page with the print to open. */
    @POST
    @Path("labels/{code}/reprints")
    @PermissionsAllowed(Act.LABEL_PRINT)
    public Response reprint(
            @PathParam("code") String code,
            @RestForm String id,
            @RestForm String stock,
            @RestForm String reprintReason) {
        UUID made = id(id);
        LabelForm form = new LabelForm(made.toString(), text(stock), text(reprintReason), "");
        return change(
                code,
                form,
                () -> labels.reprint(
                        code, made, new ReprintLabel(form.stock(), required("reprintReason", reprintReason))));
    }

    /**
     * Scans one label after another and says after each whether all are one kit.
     *
     * @param before what was scanned so far
     * @param next the newest scan, or null
     */
    @GET
    @Path("scan-back")
    @PermissionsAllowed(Act.READ_COMMON)
    public Response scanBack(@QueryParam("code") List<String> before, @QueryParam("next") String next) {
        List<String> all =
                new ArrayList<>(codes.read(before).stream().map(LabelView::code).toList());
        if (next != null && !next.isBlank()) {
            all.add(next.strip());
        }
        try {
            ScanBack same = all.isEmpty() ? null : codes.together(all);
            return Reply.ok(Templates.scanBack(codes.read(all), same, Faults.NONE));
        } catch (DomainException refusal) {
            // What was not read at all is not kept: the next scan takes its place.
            return Reply.page(
                    refusal.status() == 404 ? 422 : refusal.status(),
                    Templates.scanBack(codes.read(all), null, Faults.ofWords(refusal)));
        }
    }

    private Response change(String code, LabelForm form, Runnable deed) {
        try {
            deed.run();
            return Response.seeOther(
                            URI.create("/kits/labels/" + codes.code(code).code()))
                    .build();
        } catch (DomainException refusal) {
            return Response.status(refusal.status())
                    .entity(page(code, form, Faults.of(refusal)))
                    .build();
        }
    }

    private TemplateInstance page(String code, LabelForm form, Faults faults) {
        CodeView label = codes.code(code);
        return Templates.label(
                label,
                plan.station(label.station()).name(),
                plan.season(label.season()).name(),
                histories.of(List.of(label.code())).get(label.code()),
                labels.reprints(label.code()).stream()
                        .sorted(Comparator.comparing(ReprintView::printNumber).reversed())
                        .map(print -> Reprint.of(print, label))
                        .toList(),
                StockView.all(),
                form,
                faults);
    }

    private static String required(String field, String text) {
        if (text == null || text.isBlank()) {
            throw InvalidInput.field(field, "REQUIRED", "The reason is missing; say why, in a few words");
        }
        if (text.strip().length() > LONGEST_REASON) {
            throw InvalidInput.field(
                    field,
                    "TOO_LONG",
                    "The reason has " + text.strip().length() + " characters; allowed: up to " + LONGEST_REASON);
        }
        return text.strip();
    }

    /** A form without its id is a new one. */
    private static UUID id(String given) {
        try {
            return UUID.fromString(text(given));
        } catch (IllegalArgumentException noId) {
            return UUID.randomUUID();
        }
    }

    private static String text(String typed) {
        return typed == null ? "" : typed.strip();
    }
}
