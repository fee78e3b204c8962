package org.dentary.prevalence.document;

import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.ColumnText;
import com.lowagie.text.pdf.PdfPageEventHelper;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;

/** The foot of each page: what the document is, what it stands on, page x of y. */
final class PageNumbers extends PdfPageEventHelper {
    private static final float BASE = 30;

    private final String words;
    private PdfTemplate total;

    PageNumbers(String words) {
        this.words = words;
    }

    @Override
    public void onOpenDocument(PdfWriter writer, Document document) {
        total = writer.getDirectContent().createTemplate(30, 14);
    }

    @Override
    public void onEndPage(PdfWriter writer, Document document) {
        ColumnText.showTextAligned(
                writer.getDirectContent(),
                Element.ALIGN_LEFT,
                new Phrase(words, PdfStyle.SMALL),
                document.left(),
                BASE,
                0);
        float right = document.right() - 16;
        ColumnText.showTextAligned(
                writer.getDirectContent(),
                Element.ALIGN_RIGHT,
                new Phrase("page " + writer.getPageNumber() + " of", PdfStyle.SMALL),
                right,
                BASE,
                0);
        writer.getDirectContent().addTemplate(total, right + 3, BASE);
    }

    @Override
    public void onCloseDocument(PdfWriter writer, Document document) {
        ColumnText.showTextAligned(
                total,
                Element.ALIGN_LEFT,
                new Phrase(String.valueOf(writer.getPageNumber() - 1), PdfStyle.SMALL),
                0,
                0,
                0);
    }
}
