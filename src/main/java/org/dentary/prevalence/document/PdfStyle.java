package org.dentary.prevalence.document;

import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.Font;
import com.lowagie.text.Paragraph;
import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import java.awt.Color;
import java.util.List;
import org.dentary.platform.paper.PaperFont;

/** The lettering and the tables of the document. Nothing is told by color: headings are larger, heads of tables are ruled. */
public final class PdfStyle {
    public static final Font TITLE = PaperFont.strong(17);
    public static final Font HEADING = PaperFont.strong(12);
    public static final Font TEXT = PaperFont.text(9.5f);
    public static final Font STRONG = PaperFont.strong(9.5f);
    public static final Font SMALL = PaperFont.text(8);
    /** Points left free around a page. */
    public static final float MARGIN = 46;

    private static final Color RULE = new Color(0x888888);
    private static final float SPACE = 3;

    private PdfStyle() {}

    public static Paragraph heading(String words) {
        Paragraph heading = new Paragraph(words, HEADING);
        heading.setSpacingBefore(12);
        heading.setSpacingAfter(4);
        heading.setKeepTogether(true);
        return heading;
    }

    public static Paragraph text(String words, Font font) {
        Paragraph paragraph = new Paragraph(font.getSize() * 1.35f, words, font);
        paragraph.setSpacingAfter(SPACE);
        return paragraph;
    }

    /** A list item with a dash hanging left of its text. */
    public static Paragraph item(String words) {
        Paragraph item = text("\u2013  " + words, TEXT);
        item.setIndentationLeft(10);
        item.setFirstLineIndent(-10);
        return item;
    }

    /** A heading with its items; it is never the last line of a page. Nothing where there are none. */
    public static void section(Document document, String heading, List<String> items) {
        if (!items.isEmpty()) {
            document.add(kept(heading(heading), item(items.get(0))));
            items.stream().skip(1).forEach(text -> document.add(item(text)));
        }
    }

    /** A table across the page whose head is repeated on every page it runs over. */
    public static PdfPTable table(float... widths) {
        PdfPTable table = new PdfPTable(widths);
        table.setWidthPercentage(100);
        table.setSpacingBefore(2);
        table.setSpacingAfter(4);
        table.setSplitRows(false);
        return table;
    }

    /** A line a fact: what it is, heavier, and what it says. */
    public static PdfPTable facts(List<Fact> facts) {
        PdfPTable table = table(1.4f, 5);
        facts.forEach(fact -> {
            table.addCell(cell(fact.what(), STRONG, false));
            table.addCell(cell(fact.value(), TEXT, false));
        });
        return table;
    }

    public static PdfPCell cell(String words, Font font, boolean number) {
        PdfPCell cell = new PdfPCell(new Phrase(words, font));
        cell.setBorder(PdfPCell.BOTTOM);
        cell.setBorderColor(RULE);
        cell.setBorderWidth(0.4f);
        cell.setPadding(SPACE);
        cell.setNoWrap(number && words.length() < 24);
        cell.setHorizontalAlignment(number ? Element.ALIGN_RIGHT : Element.ALIGN_LEFT);
        return cell;
    }

    public static PdfPCell head(String words, boolean number) {
        PdfPCell cell = cell(words, STRONG, number);
        cell.setNoWrap(false);
        cell.setBorderColor(Color.BLACK);
        cell.setBorderWidth(1);
        cell.setVerticalAlignment(Element.ALIGN_BOTTOM);
        return cell;
    }

    /** What belongs together in one cell, so that no page break comes between. */
    public static PdfPTable kept(Element... elements) {
        PdfPCell cell = new PdfPCell();
        cell.setBorder(PdfPCell.NO_BORDER);
        cell.setPadding(0);
        for (Element element : elements) {
            cell.addElement(element);
        }
        PdfPTable kept = table(1);
        kept.addCell(cell);
        kept.setKeepTogether(true);
        return kept;
    }

    /** A box with a thick left edge, as cautions have on the screen. */
    public static PdfPTable caution(String words) {
        PdfPTable box = table(1);
        PdfPCell cell = new PdfPCell(new Phrase(words, TEXT));
        cell.setBorder(PdfPCell.LEFT);
        cell.setBorderColor(Color.BLACK);
        cell.setBorderWidth(2.5f);
        cell.setPadding(4);
        cell.setPaddingLeft(8);
        box.addCell(cell);
        box.setKeepTogether(true);
        return box;
    }
}
