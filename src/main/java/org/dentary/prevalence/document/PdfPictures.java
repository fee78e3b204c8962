package org.dentary.prevalence.document;

import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.Image;
import com.lowagie.text.PageSize;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;
import jakarta.enterprise.context.ApplicationScoped;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import org.dentary.prevalence.PrevalenceAnswers.Answer;
import org.dentary.prevalence.pictures.Picture;
import org.dentary.prevalence.pictures.PictureService;

/** The pictures of the season in the document: each with its heading and caption on one page, and its table. */
@ApplicationScoped
public class PdfPictures {
    private static final float ACROSS = PageSize.LETTER.getWidth() - 2 * PdfStyle.MARGIN;
    /** What a heading of two lines and a caption of five leave of a page. */
    private static final float DOWN = PageSize.LETTER.getHeight() - 2 * PdfStyle.MARGIN - 150;

    /** Points that a picture and its table may take down a page to be kept together. */
    private static final float WITH_TABLE = 330;

    private static final float ROW = 18;
    private static final int WIDE_CELL = 14;

    private final PictureService pictures;

    PdfPictures(PictureService pictures) {
        this.pictures = pictures;
    }

    void add(Document document, PdfWriter writer, Answer answer) {
        PictureService.Hanging hanging = pictures.with(answer.question());
        hanging.pictures().forEach(picture -> {
            Image image = image(writer, picture.onPaper(), picture.words());
            List<Element> together = new ArrayList<>(List.of(
                    PdfStyle.heading(picture.title()),
                    image,
                    PdfStyle.text(picture.how() + told(answer), PdfStyle.SMALL)));
            PdfPTable table = table(picture);
            boolean fits = image.getScaledHeight() + table.size() * ROW < WITH_TABLE;
            if (fits) {
                together.add(table);
            }
            document.add(PdfStyle.kept(together.toArray(Element[]::new)));
            if (!fits) {
                document.add(table);
            }
        });
        hanging.leftOut().forEach(why -> document.add(PdfStyle.text(why, PdfStyle.SMALL)));
    }

    private static String told(Answer answer) {
        return answer.question().cut() == null
                ? " Counted when this document was made, a moment after the figures above."
                : "";
    }

    /** A drawing as lines and letters, not pixels, as large as the page takes it. */
    public static Image image(PdfWriter writer, Picture.Plate plate, String words) {
        PdfTemplate canvas = writer.getDirectContent().createTemplate(plate.width(), plate.height());
        Graphics2D graphics = canvas.createGraphicsShapes(plate.width(), plate.height());
        plate.draw().accept(graphics);
        graphics.dispose();
        Image image = Image.getInstance(canvas);
        image.scaleToFit(ACROSS, DOWN);
        image.setAlt(words);
        return image;
    }

    private static PdfPTable table(Picture picture) {
        float[] widths = new float[picture.columns().size()];
        List<List<Picture.Shown>> rows = picture.shown();
        for (int i = 0; i < widths.length; i++) {
            int column = i;
            boolean wide = rows.stream().anyMatch(row -> row.get(column).text().length() > WIDE_CELL);
            widths[i] = wide ? 2 : 1;
        }
        PdfPTable table = PdfStyle.table(widths);
        picture.columns().forEach(column -> table.addCell(PdfStyle.head(column.head(), column.number())));
        table.setHeaderRows(1);
        rows.forEach(
                row -> row.forEach(cell -> table.addCell(PdfStyle.cell(cell.text(), PdfStyle.TEXT, cell.number()))));
        return table;
    }
}
