package org.dentary.platform.paper;

import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.Font;
import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.ColumnText;
import com.lowagie.text.pdf.PdfPageEventHelper;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;

/** The foot of every page: what it belongs to, and page x of y of that part; y is filled in when the part ends. */
public final class PaperFooter extends PdfPageEventHelper {
    private static final float SIZE = 8;
    private static final float FOOT = 24;
    private static final Font FONT = PaperFont.text(SIZE);

    private final String right;
    private String left;
    private PdfTemplate total;
    private int page;

    /**
     * @param left what the first part is, if there is only one; else empty, and each is begun
     * @param right what stands at the right of every foot, such as who printed it when; may be empty
     */
    public PaperFooter(String left, String right) {
        this.left = left;
        this.right = right;
    }

    /** From the page at hand on, this part is counted anew. */
    public void begin(PdfWriter writer, String part) {
        end();
        left = part;
        page = 0;
        total = writer.getDirectContent().createTemplate(40, 12);
    }

    private void end() {
        if (total != null) {
            ColumnText.showTextAligned(total, Element.ALIGN_LEFT, new Phrase(String.valueOf(page), FONT), 0, 2, 0);
        }
    }

    @Override
    public void onOpenDocument(PdfWriter writer, Document document) {
        begin(writer, left);
    }

    @Override
    public void onEndPage(PdfWriter writer, Document document) {
        page++;
        String text = left + ", page " + page + " of ";
        float width = FONT.getBaseFont().getWidthPoint(text, SIZE);
        ColumnText.showTextAligned(
                writer.getDirectContent(), Element.ALIGN_LEFT, new Phrase(text, FONT), document.left(), FOOT, 0);
        writer.getDirectContent().addTemplate(total, document.left() + width, FOOT - 2);
        ColumnText.showTextAligned(
                writer.getDirectContent(), Element.ALIGN_RIGHT, new Phrase(right, FONT), document.right(), FOOT, 0);
    }

    @Override
    public void onCloseDocument(PdfWriter writer, Document document) {
        end();
    }
}
