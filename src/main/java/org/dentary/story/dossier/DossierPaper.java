package org.dentary.story.dossier;

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
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.dentary.codes.LabelCode;
import org.dentary.codes.symbol.SymbolImages;
import org.dentary.codes.symbol.Symbology;
import org.dentary.codes.symbol.Symbols;
import org.dentary.platform.paper.PaperFont;
import org.dentary.platform.paper.PaperFooter;

/**
 * Dossiers on paper, black on white so that a photocopy keeps them: each begins on a page of its own and counts its
 * pages. Pages leave as they are finished; however many dossiers, one is in memory.
 */
final class DossierPaper implements AutoCloseable {
    static final Font TITLE = PaperFont.strong(16);
    static final Font HEAD = PaperFont.strong(11);
    static final Font TEXT = PaperFont.text(9);
    static final Font BOLD = PaperFont.strong(9);
    static final Font SMALL = PaperFont.text(8);
    static final Font CODE = PaperFont.code(7.5f);
    private static final float MARGIN = 42;
    private static final int MODULE_PIXELS = 4;

    private final Document document;
    private final PdfWriter writer;
    private final PaperFooter footer;
    private boolean begun;

    /**
     * A paper that is written to a stream, which stays open.
     *
     * @param title of the document
     * @param printed who printed it when, at the foot of every page
     */
    DossierPaper(OutputStream out, String title, String printed) {
        document = new Document(PageSize.LETTER, MARGIN, MARGIN, MARGIN, MARGIN);
        writer = PdfWriter.getInstance(document, out);
        writer.setCloseStream(false);
        footer = new PaperFooter("", printed);
        writer.setPageEvent(footer);
        document.addTitle(title);
    }

    PdfWriter writer() {
        return writer;
    }

    /** Begins a part on a fresh page. */
    void part(String name) {
        if (begun) {
            document.newPage();
        } else {
            document.open();
            begun = true;
        }
        footer.begin(writer, name);
    }

    void add(Element element) {
        try {
            document.add(element);
        } catch (DocumentException fault) {
            throw new IllegalStateException(fault);
        }
    }

    void line(String words, Font font) {
        Paragraph paragraph = new Paragraph(words, font);
        paragraph.setLeading(font.getSize() * 1.3f);
        paragraph.setSpacingAfter(2);
        add(paragraph);
    }

    void heading(String words) {
        Paragraph heading = new Paragraph(words, HEAD);
        heading.setSpacingBefore(10);
        heading.setSpacingAfter(4);
        heading.setKeepTogether(true);
        add(heading);
    }

    /** Two columns: what it is, and what it says. */
    void facts(List<String[]> facts, Font values) {
        PdfPTable table = new PdfPTable(new float[] {1, 4.2f});
        table.setWidthPercentage(100);
        for (String[] fact : facts) {
            table.addCell(bare(new Phrase(fact[0], SMALL)));
            table.addCell(bare(new Phrase(fact[1], values)));
        }
        add(table);
    }

    /** The heading of a dossier with its code to be read by people, by a bar code scanner and by a camera. */
    void top(String title, String underTitle, String code) {
        PdfPTable head = new PdfPTable(new float[] {3, 2.6f, 1});
        head.setWidthPercentage(100);
        PdfPCell words = new PdfPCell();
        words.setBorder(0);
        words.setPadding(0);
        words.addElement(new Paragraph(title, TITLE));
        words.addElement(new Paragraph(DossierRules.grouped(code), PaperFont.code(15)));
        words.addElement(new Paragraph(underTitle, TEXT));
        head.addCell(words);
        head.addCell(symbol(Symbology.CODE_128, code, 190, 46));
        head.addCell(symbol(Symbology.DATA_MATRIX, code, 58, 58));
        add(head);
    }

    /** A picture, JPEG, no larger than said and never enlarged. */
    static Image picture(byte[] jpeg, float mostWide, float mostHigh) {
        try {
            Image image = Image.getInstance(jpeg);
            if (image.getWidth() > mostWide || image.getHeight() > mostHigh) {
                image.scaleToFit(mostWide, mostHigh);
            }
            image.setAlignment(Element.ALIGN_LEFT);
            return image;
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static PdfPCell symbol(Symbology symbology, String code, float width, float height) {
        try {
            Image image =
                    Image.getInstance(SymbolImages.png(Symbols.of(symbology, LabelCode.parse(code)), MODULE_PIXELS));
            image.scaleAbsolute(width, height);
            PdfPCell cell = new PdfPCell(image);
            cell.setBorder(0);
            cell.setHorizontalAlignment(Element.ALIGN_RIGHT);
            return cell;
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    static PdfPCell bare(Phrase phrase) {
        PdfPCell cell = new PdfPCell(phrase);
        cell.setBorder(0);
        cell.setPaddingLeft(0);
        cell.setPaddingTop(1);
        cell.setPaddingBottom(2);
        return cell;
    }

    @Override
    public void close() {
        document.close();
    }
}
