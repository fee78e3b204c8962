package org.dentary.submission.manifest;

import com.lowagie.text.Document;
import com.lowagie.text.DocumentException;
import com.lowagie.text.Element;
import com.lowagie.text.Font;
import com.lowagie.text.Image;
import com.lowagie.text.PageSize;
import com.lowagie.text.Paragraph;
import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfWriter;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.dentary.cautions.CautionService;
import org.dentary.cautions.Hazard;
import org.dentary.codes.symbol.SymbolImages;
import org.dentary.codes.symbol.Symbology;
import org.dentary.codes.symbol.Symbols;
import org.dentary.platform.paper.PaperFont;
import org.dentary.platform.paper.PaperFooter;
import org.dentary.submission.Receiving;
import org.dentary.submission.SubmissionView;
import org.dentary.submission.packing.PackedView;

/** Draws a manifest: the laboratory's copy, then the copy for the box, each with lists by box and a packing check-list. */
@ApplicationScoped
class ManifestPdf {
    private static final Font TITLE = PaperFont.strong(16);
    private static final Font HEAD = PaperFont.strong(11);
    private static final Font TEXT = PaperFont.text(9);
    private static final Font BOLD = PaperFont.strong(9);
    private static final Font SMALL = PaperFont.text(8);
    private static final float[] WIDTHS = {2.3f, 3.6f, 2.1f, 1.9f, 1.6f, 1.4f};
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("MMM d, uuuu, HH:mm z", Locale.US);
    private static final List<String> CHECKS = List.of(
            "Did a trained shipper classify and mark this parcel? Who, and when?",
            "Is every container closed, and inside a second one that holds a leak?",
            "Are formalin jars apart from ice and from frozen tissue?",
            "Does the list in the box match what is in it, counted by a second person?",
            "Will it arrive on a day on which the laboratory receives?");

    private final CautionService cautions;

    ManifestPdf(CautionService cautions) {
        this.cautions = cautions;
    }

    /**
     * Draws both copies.
     *
     * @param asks how the laboratory takes parcels, in its own words where the plan has them; may be empty
     * @param zone of the clock on which times are said
     */
    byte[] of(SubmissionView submission, String laboratory, List<Receiving.Fact> asks, ZoneId zone) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Document document = new Document(PageSize.LETTER, 42, 42, 42, 48)) {
            PdfWriter writer = PdfWriter.getInstance(document, out);
            writer.setPageEvent(new PaperFooter("Submission " + submission.number(), ""));
            document.addTitle("Submission " + submission.number());
            document.open();
            copy(document, submission, laboratory, asks, zone, "Laboratory's copy");
            document.newPage();
            copy(document, submission, laboratory, asks, zone, "Copy for the box");
        } catch (DocumentException e) {
            throw new IllegalStateException(e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private void copy(
            Document document,
            SubmissionView submission,
            String laboratory,
            List<Receiving.Fact> asks,
            ZoneId zone,
            String which)
            throws IOException {
        PdfPTable head = new PdfPTable(new float[] {4, 1});
        head.setWidthPercentage(100);
        PdfPCell words = bare();
        words.addElement(new Paragraph("Submission " + submission.number(), TITLE));
        words.addElement(new Paragraph(which + ", to " + laboratory, HEAD));
        words.addElement(new Paragraph(
                submission.purpose().toLowerCase(Locale.ROOT).replace('_', ' ') + "; "
                        + specimens(submission.specimens().size())
                        + "; carrier " + said(submission.carrier()) + ", waybill "
                        + said(submission.waybill()) + "; left "
                        + said(
                                submission.dispatchedAt() == null
                                        ? null
                                        : MOMENT.withZone(zone).format(submission.dispatchedAt())),
                TEXT));
        words.addElement(new Paragraph("Id " + submission.id(), SMALL));
        head.addCell(words);
        PdfPCell symbol = bare();
        symbol.setHorizontalAlignment(Element.ALIGN_RIGHT);
        Image matrix = Image.getInstance(SymbolImages.png(
                Symbols.of(Symbology.DATA_MATRIX, submission.id().toUpperCase(Locale.ROOT)), 4));
        matrix.scaleToFit(64, 64);
        symbol.addElement(matrix);
        head.addCell(symbol);
        document.add(head);
        counts(document, submission);
        boxes(document, submission);
        checks(document, submission);
        asks(document, laboratory, asks);
        document.add(heading("Cautions"));
        cautions.at(Hazard.PACKING).forEach(caution -> document.add(new Paragraph(caution.text(), SMALL)));
        document.add(new Paragraph(
                "The laboratory's current written instructions and the carrier's rules stand above this paper.",
                SMALL));
    }

    private static void asks(Document document, String laboratory, List<Receiving.Fact> asks) {
        if (!asks.isEmpty()) {
            document.add(heading("How " + laboratory + " takes parcels, as the plan has it"));
            asks.forEach(ask -> document.add(new Paragraph(ask.what() + ": " + ask.words(), TEXT)));
        }
    }

    private static void counts(Document document, SubmissionView submission) {
        Map<String, Long> counts = submission.specimens().stream()
                .collect(Collectors.groupingBy(
                        piece -> words(piece.tissue()) + ", " + words(piece.preservation()),
                        TreeMap::new,
                        Collectors.counting()));
        document.add(heading("Counts"));
        counts.forEach((what, number) -> document.add(new Paragraph(number + "  " + what, TEXT)));
        boolean formalin = submission.specimens().stream()
                .anyMatch(piece -> piece.preservation().equals("FORMALIN"));
        document.add(new Paragraph(
                "Declared hazards: animal tissue that may carry an infectious agent"
                        + (formalin ? "; formalin (see its safety sheet)" : "") + ".",
                TEXT));
    }

    private static void boxes(Document document, SubmissionView submission) throws IOException {
        Map<String, List<PackedView>> boxes = submission.specimens().stream()
                .collect(Collectors.groupingBy(
                        piece -> piece.box() == null ? "" : piece.box(), TreeMap::new, Collectors.toList()));
        for (Map.Entry<String, List<PackedView>> box : boxes.entrySet()) {
            document.add(heading(
                    box.getKey().isEmpty()
                            ? "Not in a numbered box"
                            : "Box " + grouped(box.getKey()) + ", "
                                    + specimens(box.getValue().size())));
            if (!box.getKey().isEmpty()) {
                Image bars = Image.getInstance(SymbolImages.png(Symbols.of(Symbology.CODE_128, box.getKey()), 3));
                bars.scaleToFit(200, 40);
                document.add(bars);
            }
            PdfPTable table = new PdfPTable(WIDTHS);
            table.setWidthPercentage(100);
            table.setSpacingBefore(4);
            table.setHeaderRows(1);
            for (String column : List.of("Code", "Tissue", "Kept", "Collected", "Age class", "Sex")) {
                table.addCell(cell(column, BOLD));
            }
            for (PackedView piece : box.getValue()) {
                table.addCell(cell(grouped(piece.code()), BOLD));
                table.addCell(cell(words(piece.side()) + " " + words(piece.tissue()), TEXT));
                table.addCell(cell(words(piece.preservation()), TEXT));
                table.addCell(cell(String.valueOf(piece.collectedOn()), TEXT));
                table.addCell(cell(words(piece.ageClass()), TEXT));
                table.addCell(cell(words(piece.sex()), TEXT));
                if (piece.overrideReason() != null) {
                    note(table, "Goes although the rules say otherwise: " + piece.overrideReason());
                }
                if (piece.identityException()) {
                    note(
                            table,
                            "Its label did not match when it was first received; its identity was accepted by a signed"
                                    + " exception. Say so on the report.");
                }
            }
            document.add(table);
        }
    }

    private static void checks(Document document, SubmissionView submission) {
        document.add(heading("Before it leaves"));
        CHECKS.forEach(check -> document.add(new Paragraph("[   ]  " + check + "  ______________________", TEXT)));
        if (submission.shipper() != null) {
            document.add(new Paragraph("Classified and marked by: " + submission.shipper(), TEXT));
        }
        document.add(new Paragraph(
                "Relinquished by ____________________  at ______________    Received by ____________________  at ______________",
                TEXT));
    }

    private static Paragraph heading(String words) {
        Paragraph heading = new Paragraph(words, HEAD);
        heading.setSpacingBefore(10);
        heading.setSpacingAfter(3);
        return heading;
    }

    private static void note(PdfPTable table, String words) {
        PdfPCell note = cell(words, SMALL);
        note.setColspan(WIDTHS.length);
        table.addCell(note);
    }

    private static PdfPCell cell(String words, Font font) {
        PdfPCell cell = new PdfPCell(new Phrase(words, font));
        cell.setPadding(3);
        cell.setBorderWidth(0.4f);
        return cell;
    }

    private static PdfPCell bare() {
        PdfPCell cell = new PdfPCell();
        cell.setBorder(0);
        return cell;
    }

    private static String specimens(int count) {
        return count + (count == 1 ? " specimen" : " specimens");
    }

    private static String grouped(String code) {
        return code.substring(0, 4) + "-" + code.substring(4, 8) + "-" + code.substring(8);
    }

    private static String words(String code) {
        return code.toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String said(Object value) {
        return value == null ? "not yet said" : value.toString();
    }
}
