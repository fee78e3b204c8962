package org.dentary.jaw.exam;

import com.lowagie.text.Element;
import com.lowagie.text.Font;
import com.lowagie.text.FontFactory;
import com.lowagie.text.Image;
import com.lowagie.text.Paragraph;
import com.lowagie.text.Phrase;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;
import java.awt.Graphics2D;
import org.dentary.jaw.drawing.JawDrawing;
import org.dentary.jaw.drawing.JawDrawings;

/** The printed key's type, tables and drawings: how things look on its page, not what it says. */
final class SheetPen {
    static final Font TITLE = FontFactory.getFont(FontFactory.HELVETICA_BOLD, 14);
    static final Font HEAD = FontFactory.getFont(FontFactory.HELVETICA_BOLD, 9.5f);
    static final Font TEXT = FontFactory.getFont(FontFactory.HELVETICA, 8.6f);
    static final Font STRONG = FontFactory.getFont(FontFactory.HELVETICA_BOLD, 8.6f);
    static final Font SMALL = FontFactory.getFont(FontFactory.HELVETICA, 7.6f);

    private SheetPen() {}

    /** A drawing as lines on the page, as wide as told. */
    static Image drawing(PdfWriter writer, String name, float width) {
        JawDrawing drawing = JawDrawings.find(name).orElseThrow();
        PdfTemplate template = writer.getDirectContent().createTemplate(drawing.width(), drawing.height());
        Graphics2D graphics = template.createGraphicsShapes(drawing.width(), drawing.height());
        drawing.paint(graphics);
        graphics.dispose();
        Image image = Image.getInstance(template);
        image.scaleToFit(width, width);
        image.setAlignment(Element.ALIGN_CENTER);
        image.setAlt(drawing.title() + ". " + drawing.description());
        return image;
    }

    static PdfPTable table(float... widths) {
        PdfPTable table = new PdfPTable(widths);
        table.setWidthPercentage(100);
        return table;
    }

    static PdfPCell bare() {
        PdfPCell cell = new PdfPCell();
        cell.setBorder(Rectangle.NO_BORDER);
        cell.setPadding(1.5f);
        return cell;
    }

    static PdfPCell ruled() {
        PdfPCell cell = bare();
        cell.setBorder(Rectangle.BOTTOM);
        cell.setBorderWidth(0.6f);
        cell.setVerticalAlignment(Element.ALIGN_MIDDLE);
        return cell;
    }

    static PdfPCell cell(String text, Font font) {
        PdfPCell cell = ruled();
        cell.setPhrase(new Phrase(text, font));
        return cell;
    }

    static Paragraph paragraph(String text, Font font) {
        Paragraph paragraph = new Paragraph(text, font);
        paragraph.setLeading(0, 1.16f);
        return paragraph;
    }

    static Paragraph listed(String text, Font font) {
        Paragraph paragraph = paragraph(text, font);
        paragraph.setSpacingBefore(1.8f);
        return paragraph;
    }

    static Paragraph spaced(Paragraph paragraph) {
        paragraph.setSpacingBefore(6);
        return paragraph;
    }
}
