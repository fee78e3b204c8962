package org.dentary.kit.print;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.io.OutputStream;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.cautions.CautionService;
import org.dentary.cautions.CautionView;
import org.dentary.cautions.Hazard;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Part;
import org.dentary.codes.sheet.CoverSheet;
import org.dentary.codes.sheet.LabelContent;
import org.dentary.codes.sheet.LabelSheet;
import org.dentary.kit.BlockService;
import org.dentary.kit.BlockView;
import org.dentary.kit.LabelOfKit;
import org.dentary.kit.LabelService;
import org.dentary.kit.ReprintView;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;

/**
 * Prints labels. Each method checks and looks up first and gives back what writes the PDF, so that a refusal is told
 * before a byte is sent; the labels are read while the PDF is on its way, and neither is ever held whole.
 */
@ApplicationScoped
public class LabelPrintService {
    private static final int LONGEST_REASON = 2000;

    private final BlockService blocks;
    private final LabelService labels;
    private final PrintQueries queries;
    private final Snapshot snapshot;
    private final CautionService cautions;
    private final CurrentAccount current;
    private final Clock clock;

    LabelPrintService(
            BlockService blocks,
            LabelService labels,
            PrintQueries queries,
            Snapshot snapshot,
            CautionService cautions,
            CurrentAccount current,
            Clock clock) {
        this.blocks = blocks;
        this.labels = labels;
        this.queries = queries;
        this.snapshot = snapshot;
        this.cautions = cautions;
        this.current = current;
        this.clock = clock;
    }

    /**
     * What a printing of a block takes: labels of each part and in all, sheets, where the stock's labels do not last.
     *
     * @throws InvalidInput naming each value of the address that cannot be
     * @throws RuleBroken {@code NOTHING_TO_PRINT} where every label is void, or left out by 0 copies
     */
    public PrintingPlan plan(UUID id, PrintParameters asked) {
        BlockView block = blocks.block(id);
        return plan(block, printing(block, asked));
    }

    /**
     * The label sheets of a block; voided labels are left out, and the trail keeps what was printed.
     *
     * @param reason why, where it is not the first time; may be null
     */
    @Transactional
    public Consumer<OutputStream> sheets(UUID id, PrintParameters asked, String reason) {
        if (reason != null && reason.length() > LONGEST_REASON) {
            throw InvalidInput.field(
                    "reason", "TOO_LONG", "The reason has " + reason.length() + " characters; allowed: up to 2000");
        }
        BlockView block = blocks.block(id);
        Printing printing = printing(block, asked);
        PrintingPlan plan = plan(block, printing);
        String copies = plan.parts().stream()
                .map(part -> part.part() + ":" + part.copies())
                .collect(Collectors.joining(" "));
        queries.printed(plan, copies, reason, current.get().actor(), clock.instant());
        List<String> parts = plan.parts().stream()
                .filter(part -> part.copies() > 0)
                .map(PrintingPlan.PartCopies::part)
                .toList();
        LabelSheet sheet = LabelSheet.on(printing.stock());
        return out -> snapshot.<LabelOfKit>streamed(
                () -> queries.labels(id, parts),
                rows -> sheet.write(
                        rows.map(label -> LabelContent.of(
                                        LabelCode.parse(label.code()), block.stationName(), block.seasonName()))
                                .iterator(),
                        printing.run(),
                        out));
    }

    /** The printings of a block made so far, newest first: those before a number, at most so many. */
    @SuppressWarnings("unchecked")
    public List<BlockPrinting> printings(UUID id, long before, int most) {
        blocks.block(id);
        return queries.printings(id, before).setMaxResults(most).getResultList();
    }

    /** Streams all of them. */
    void printings(UUID id, Consumer<BlockPrinting> each) {
        snapshot.stream(() -> queries.printings(id, Long.MAX_VALUE), each);
    }

    /** The page that travels with a printing of a block. */
    public Consumer<OutputStream> cover(UUID id, PrintParameters asked) {
        BlockView block = blocks.block(id);
        Printing printing = printing(block, asked);
        PrintingPlan plan = plan(block, printing);
        List<String> facts = new ArrayList<>(List.of(
                "Season: " + block.seasonName(),
                "Kits: " + block.kits() + ", each with " + block.partWords(),
                "Labels: " + plan.labels() + " (identical copies of each: "
                        + plan.parts().stream()
                                .map(part -> part.words() + " " + part.copies())
                                .collect(Collectors.joining(", "))
                        + ")",
                printing.stock().name() + ": " + plan.sheets()
                        + (plan.labelsOnASheet() == 1
                                ? " labels of the roll"
                                : plan.sheets() == 1 ? " sheet" : " sheets")
                        + (plan.start() > 1 ? ", from label " + plan.start() + " of the first" : ""),
                "Block: " + block.id()));
        List<String> warned = new ArrayList<>(plan.cautions());
        Stream.of(Hazard.LABELING, Hazard.SAMPLING, Hazard.FORMALIN)
                .flatMap(hazard -> cautions.at(hazard).stream())
                .distinct()
                .map(LabelPrintService::words)
                .forEach(warned::add);
        CoverSheet cover = new CoverSheet(
                "Kits for " + block.stationName(),
                facts,
                CoverSheet.LABELING_ADVICE,
                warned,
                "The laboratory's, health agency's and safety officer's written instructions stand above this page.");
        return out -> cover.write(
                printing.stock().code().startsWith("A4") ? CoverSheet.Paper.A4 : CoverSheet.Paper.LETTER, out);
    }

    /**
     * One label again; the print says which print it is.
     *
     * @throws RuleBroken {@code LABEL_VOID} where it was voided since
     */
    public Consumer<OutputStream> reprint(String typed, UUID id, String start, String offsetX, String offsetY) {
        ReprintView reprint = labels.reprint(typed, id);
        labels.requireUsable(reprint.label());
        Printing printing = Printing.of(reprint.stock(), start, offsetX, offsetY);
        BlockView block = blocks.ofLabel(reprint.label());
        LabelContent content = LabelContent.of(
                LabelCode.parse(reprint.label()),
                "Print " + reprint.printNumber(),
                block.stationName(),
                block.seasonName());
        LabelSheet sheet = LabelSheet.on(printing.stock());
        return out -> sheet.write(List.of(content).iterator(), printing.run(), out);
    }

    private static Printing printing(BlockView block, PrintParameters asked) {
        return Printing.of(asked).with(Printing.copies(asked.copies, block.parts(), block.copies()));
    }

    private PrintingPlan plan(BlockView block, Printing printing) {
        Map<String, Long> codes = queries.counts(block.id()).stream()
                .collect(Collectors.toMap(PrintQueries.PartCount::part, PrintQueries.PartCount::labels));
        List<PrintingPlan.PartCopies> parts = block.parts().stream()
                .map(part -> {
                    int of = codes.getOrDefault(part.name(), 0L).intValue();
                    int copies = printing.run().copies().get(part);
                    return new PrintingPlan.PartCopies(part.name(), part.label(), of, copies, of * copies);
                })
                .toList();
        int count = parts.stream().mapToInt(PrintingPlan.PartCopies::labels).sum();
        if (count == 0) {
            throw new RuleBroken(
                    "NOTHING_TO_PRINT",
                    codes.isEmpty()
                            ? "Every label of this block was voided; issue another block"
                            : "With these copies no label is printed; ask for at least one copy of a part that is not void");
        }
        int onASheet = printing.stock().labelsOnAPage();
        int last = printing.run().startAt() - 1 + count;
        List<Part> printed = parts.stream()
                .filter(part -> part.labels() > 0)
                .map(part -> Part.valueOf(part.part()))
                .toList();
        return new PrintingPlan(
                block.id(),
                printing.stock().code(),
                printing.run().startAt(),
                parts,
                count,
                (last + onASheet - 1) / onASheet,
                onASheet,
                last % onASheet + 1,
                StockAdvice.cautions(printing.stock(), printed));
    }

    private static String words(CautionView caution) {
        return caution.text() + " Who decides: " + caution.authority() + ".";
    }
}
