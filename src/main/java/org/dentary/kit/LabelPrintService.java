package org.dentary.kit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.io.OutputStream;
import java.util.Iterator;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import org.dentary.codes.LabelCode;
import org.dentary.codes.sheet.CoverSheet;
import org.dentary.codes.sheet.LabelContent;
import org.dentary.codes.sheet.LabelSheet;
import org.dentary.platform.problem.RuleBroken;

/**
 * Prints labels. Each method checks and looks up first and gives back what writes the PDF, so that a refusal is told
 * before a byte is sent and no transaction stays open while it is.
 */
@ApplicationScoped
public class LabelPrintService {
    /** Common practice, no source; the program's reviewed cautions are shown where the hazard is met. */
    private static final List<String> CAUTIONS = List.of(
            "Apply labels before the container is filled: tissue, formalin and blades stay closed while you label.",
            "Wear gloves whenever a jaw, a head or a filled container is in your hands, and change them between animals.",
            "Formalin is poisonous and irritates: keep it closed, work where air moves, and follow its safety data sheet.",
            "Never eat, drink or smoke where labels and containers are handled.");

    private final BlockService blocks;
    private final LabelService labels;
    private final KitService kits;

    LabelPrintService(BlockService blocks, LabelService labels, KitService kits) {
        this.blocks = blocks;
        this.labels = labels;
        this.kits = kits;
    }

    /**
     * The label sheets of a block; voided labels are left out, and the trail keeps that they were printed.
     *
     * @param reason why, where it is not the first time; may be null
     * @throws RuleBroken {@code NOTHING_TO_PRINT} where every label is void
     */
    @Transactional
    public Consumer<OutputStream> sheets(UUID id, Printing printing, String reason) {
        BlockView block = blocks.block(id);
        List<LabelOfKit> list = blocks.labelsToPrint(id);
        if (list.isEmpty()) {
            throw new RuleBroken("NOTHING_TO_PRINT", "Every label of this block was voided; issue another block");
        }
        blocks.printed(id, printing.stock().code(), reason);
        LabelSheet sheet = LabelSheet.on(printing.stock());
        Printing run = printing.copies(block.parts(), block.copies());
        Iterator<LabelContent> contents = list.stream()
                .map(label -> LabelContent.of(LabelCode.parse(label.code()), block.stationName(), block.seasonName()))
                .iterator();
        return out -> sheet.write(contents, run.run(), out);
    }

    /** The page that travels with a block. */
    public Consumer<OutputStream> cover(UUID id) {
        BlockView block = blocks.block(id);
        CoverSheet cover = new CoverSheet(
                "Kits for " + block.stationName(),
                List.of(
                        "Season: " + block.seasonName(),
                        "Kits: " + block.kits() + ", each with " + block.partWords(),
                        "Identical copies of each label: " + block.copies(),
                        "Block: " + block.id()),
                CoverSheet.LABELING_ADVICE,
                CAUTIONS,
                "The laboratory's, health agency's and safety officer's written instructions stand above this page.");
        return out -> cover.write(CoverSheet.Paper.LETTER, out);
    }

    /** One label again; the print says which print it is. */
    public Consumer<OutputStream> reprint(String typed, UUID id, Printing printing) {
        ReprintView reprint = labels.reprint(typed, id);
        LabelView label = kits.label(typed);
        LabelContent content =
                LabelContent.of(LabelCode.parse(label.code()), "Print " + reprint.printNumber(), label.station());
        LabelSheet sheet = LabelSheet.on(printing.stock());
        return out -> sheet.write(List.of(content).iterator(), printing.run(), out);
    }
}
