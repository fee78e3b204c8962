package org.dentary.codes.sheet;

import com.lowagie.text.Document;
import com.lowagie.text.ExceptionConverter;
import com.lowagie.text.Font;
import com.lowagie.text.ListItem;
import com.lowagie.text.PageSize;
import com.lowagie.text.Paragraph;
import com.lowagie.text.pdf.PdfWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.dentary.platform.paper.PaperFont;

/**
 * The page that travels with a set of labels: what they are, how to label, what to beware of. It is printed on plain
 * paper, apart from the labels, so that it spoils none.
 *
 * @param title the heading
 * @param facts one line each: block, station, season, number of kits, stock; may be empty
 * @param advice how to label, one line each; {@link #LABELING_ADVICE} or the program's own
 * @param cautions the cautions that apply, one line each, as the program's reviewers worded them; may be empty
 * @param footing a closing line, such as who to ask and where the cautions come from; may be blank
 */
public record CoverSheet(String title, List<String> facts, List<String> advice, List<String> cautions, String footing) {

    /** How to label, in the order of the work; common practice except where a source is named in docs/labels.md. */
    public static final List<String> LABELING_ADVICE = List.of(
            "One kit is one animal. Never split a kit between two animals, and never finish another animal's kit.",
            "Label the jar, vial or bag before you fill it, while it is dry and at room temperature.",
            "Put the label on the body of the container, never on the lid.",
            "Put a pencil-written tag with the same code inside, and the same code on the outer bag: three places.",
            "Use each label for the part that is printed on it. For a further piece take a spare and name the piece.",
            "Freezers and formalin need polypropylene labels printed with resin ribbon. Paper is for forms and dry bags.",
            "When all is labeled, scan jar, bag and form together: they must be one kit. If they are not, stop and sort it out.",
            "A label that is torn, wet or unreadable is printed again and destroyed, never corrected by hand.",
            "Give back what is left, and say what was lost: every label is accounted for.");

    /** The paper of the place. */
    public enum Paper {
        /** US Letter. */
        LETTER,
        /** ISO A4. */
        A4
    }

    private static final Font HEADING = font(20, Font.BOLD);
    private static final Font SECTION = font(13, Font.BOLD);
    private static final Font TEXT = font(11, Font.NORMAL);
    private static final float MARGIN_POINTS = 54;

    /** @throws IllegalArgumentException where title or advice is missing */
    public CoverSheet {
        facts = List.copyOf(facts);
        advice = List.copyOf(advice);
        cautions = List.copyOf(cautions);
        if (title.isBlank() || advice.isEmpty()) {
            throw new IllegalArgumentException("A cover sheet has a title and advice.");
        }
    }

    /**
     * Writes the sheet as a PDF of one or more pages.
     *
     * @param out gets the PDF and stays open
     * @throws UncheckedIOException where the stream refuses it
     */
    public void write(Paper paper, OutputStream out) {
        Document document = new Document(
                paper == Paper.A4 ? PageSize.A4 : PageSize.LETTER,
                MARGIN_POINTS,
                MARGIN_POINTS,
                MARGIN_POINTS,
                MARGIN_POINTS);
        try {
            PdfWriter.getInstance(document, out).setCloseStream(false);
            document.addTitle(title);
            document.open();
            document.add(spaced(new Paragraph(title, HEADING), 0, 10));
            for (String fact : facts) {
                document.add(new Paragraph(16, fact, TEXT));
            }
            section(document, "How to label", advice, true);
            section(document, "Cautions", cautions, false);
            if (!footing.isBlank()) {
                document.add(spaced(new Paragraph(15, footing, TEXT), 14, 0));
            }
            document.close();
            out.flush();
        } catch (ExceptionConverter fault) {
            throw fault.getException() instanceof IOException broken ? new UncheckedIOException(broken) : fault;
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static void section(Document document, String heading, List<String> lines, boolean numbered) {
        if (lines.isEmpty()) {
            return;
        }
        document.add(spaced(new Paragraph(heading, SECTION), 16, 4));
        com.lowagie.text.List list = new com.lowagie.text.List(numbered, 22);
        if (!numbered) {
            list.setListSymbol("-");
        }
        for (String line : lines) {
            ListItem item = new ListItem(15, line, TEXT);
            item.setSpacingAfter(3);
            list.add(item);
        }
        document.add(list);
    }

    private static Paragraph spaced(Paragraph paragraph, float before, float after) {
        paragraph.setSpacingBefore(before);
        paragraph.setSpacingAfter(after);
        return paragraph;
    }

    private static Font font(float size, int style) {
        return new Font(PaperFont.textFace(), size, style);
    }
}
