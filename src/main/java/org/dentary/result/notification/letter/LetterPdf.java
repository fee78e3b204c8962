package org.dentary.result.notification.letter;

import com.lowagie.text.Chunk;
import com.lowagie.text.Document;
import com.lowagie.text.DocumentException;
import com.lowagie.text.Font;
import com.lowagie.text.PageSize;
import com.lowagie.text.Paragraph;
import com.lowagie.text.Phrase;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfWriter;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayOutputStream;
import java.util.List;
import org.dentary.platform.paper.PaperFont;
import org.dentary.platform.paper.PaperFooter;

/** Draws a letter on one or more US Letter pages. */
@ApplicationScoped
class LetterPdf {
    private static final Font TEXT = PaperFont.text(10.5f);
    private static final Font HEAD = PaperFont.strong(12);
    private static final Font SMALL = PaperFont.text(8.5f);
    private static final float LEADING = 15.5f;

    /**
     * What stands on the paper, from top to bottom.
     *
     * @param notes the cautions, set apart
     * @param reference what the office needs to find it again; stands at the foot of each page
     */
    record Letter(
            List<String> sender,
            List<String> recipient,
            String date,
            String subject,
            List<String> paragraphs,
            List<String> notes,
            String reference) {}

    byte[] draw(Letter letter) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Document document = new Document(PageSize.LETTER, 72, 72, 64, 60)) {
            PdfWriter.getInstance(document, out).setPageEvent(new PaperFooter(letter.reference(), ""));
            document.addTitle(letter.subject());
            document.open();
            letter.sender().forEach(line -> document.add(new Paragraph(13, line, SMALL)));
            block(document, letter.recipient(), 34);
            block(document, List.of(letter.date()), 22);
            Paragraph subject = new Paragraph(LEADING, letter.subject(), HEAD);
            subject.setSpacingBefore(18);
            subject.setSpacingAfter(4);
            document.add(subject);
            for (String text : letter.paragraphs()) {
                Paragraph paragraph = new Paragraph(LEADING, whole(text));
                paragraph.setSpacingBefore(9);
                document.add(paragraph);
            }
            document.add(notes(letter.notes()));
        } catch (DocumentException e) {
            throw new IllegalStateException(e);
        }
        return out.toByteArray();
    }

    /** Text that breaks at spaces alone: a telephone or registration number stays in one line. */
    private static Chunk whole(String text) {
        Chunk chunk = new Chunk(text, TEXT);
        chunk.setSplitCharacter((start, current, end, characters, chunks) -> characters[current] <= ' ');
        return chunk;
    }

    private static void block(Document document, List<String> lines, float before) {
        for (int i = 0; i < lines.size(); i++) {
            Paragraph line = new Paragraph(LEADING, lines.get(i), TEXT);
            line.setSpacingBefore(i == 0 ? before : 0);
            document.add(line);
        }
    }

    private static PdfPTable notes(List<String> notes) {
        PdfPTable table = new PdfPTable(1);
        table.setWidthPercentage(100);
        table.setSpacingBefore(20);
        for (String note : notes) {
            PdfPCell cell = new PdfPCell(new Phrase(note, SMALL));
            cell.setLeading(12, 0);
            cell.setBorder(Rectangle.LEFT);
            cell.setBorderWidthLeft(1.5f);
            cell.setPaddingLeft(8);
            cell.setPaddingBottom(7);
            table.addCell(cell);
        }
        return table;
    }
}
