package org.dentary.codes.sheet;

import com.lowagie.text.Document;
import com.lowagie.text.ExceptionConverter;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.Iterator;

/**
 * Writes labels as a PDF, page by page: a finished page is on its way before the next label is asked for, so a run of any
 * length takes the memory of one page. The bytes differ each time; what they show does not.
 */
public final class LabelSheet {

    private static final double POINTS_PER_MM = 72 / 25.4;

    private final LabelStock stock;
    private final LabelLayout layout;

    private LabelSheet(LabelStock stock) {
        this.stock = stock;
        this.layout = LabelLayout.of(stock);
    }

    /**
     * Sheets of a stock.
     *
     * @throws StockTooSmall where a label of the stock cannot carry a legible code
     */
    public static LabelSheet on(LabelStock stock) {
        return new LabelSheet(stock);
    }

    /** How much of what is printed a shift to the right (left below 0) moves off the page, in millimetres, at least 0. */
    public double lostBySide(double rightMm) {
        return lost(
                stock.first().rightMm() + rightMm,
                (stock.columns() - 1) * stock.pitch().rightMm() + stock.label().rightMm(),
                stock.page().rightMm());
    }

    /** The same of a shift down, or up below 0. */
    public double lostByHeight(double downMm) {
        return lost(
                stock.first().downMm() + downMm,
                (stock.rows() - 1) * stock.pitch().downMm() + stock.label().downMm(),
                stock.page().downMm());
    }

    private double lost(double from, double length, double page) {
        double edge = layout.edgeMm();
        return Math.max(0, Math.max(-(from + edge), from + length - edge - page));
    }

    /**
     * Writes labels in the order given, the copies of each one together.
     *
     * @param labels read once, one at a time; at least one
     * @param out gets the PDF and stays open
     * @return the number of labels printed
     * @throws IllegalArgumentException, before a byte is written, where there is nothing to print or the run begins past
     *     the end of a sheet
     * @throws UncheckedIOException where the stream refuses a page
     */
    public long write(Iterator<LabelContent> labels, LabelRun run, OutputStream out) {
        int onAPage = stock.labelsOnAPage();
        if (run.startAt() > onAPage) {
            throw new IllegalArgumentException("A sheet of %s has %d labels; it cannot begin at label %d."
                    .formatted(stock.code(), onAPage, run.startAt()));
        }
        if (!labels.hasNext()) {
            throw new IllegalArgumentException("There is no label to print.");
        }
        return paged("Labels", out, (document, writer) -> {
            LabelPen pen = pen(document);
            int place = run.startAt() - 1;
            long printed = 0;
            while (labels.hasNext()) {
                LabelContent content = labels.next();
                for (int copy = run.copiesOf(content.code().part()); copy > 0; copy--) {
                    if (place == onAPage) {
                        document.newPage();
                        place = 0;
                    }
                    pen.draw(writer.getDirectContent(), content, left(place, run), top(place, run));
                    writer.setPageEmpty(false);
                    place++;
                    printed++;
                }
            }
            // A run whose parts all have 0 copies leaves one empty page, for a PDF cannot have none.
            writer.setPageEmpty(false);
            return printed;
        });
    }

    /**
     * Writes one page that shows where every label of a sheet is expected: print it on plain paper at 100 %, hold it
     * against a sheet of labels, and enter how far it is off.
     *
     * @param run whose shift is applied and shown
     * @param out gets the PDF and stays open
     */
    public void writeCalibration(LabelRun run, OutputStream out) {
        paged("Calibration", out, (document, writer) -> {
            CalibrationPage page = new CalibrationPage(stock, layout, pen(document), run);
            for (int place = 0; place < stock.labelsOnAPage(); place++) {
                page.draw(writer.getDirectContent(), place, left(place, run), top(place, run));
            }
            return 1L;
        });
    }

    private interface Drawing {
        long draw(Document document, PdfWriter writer);
    }

    private long paged(String title, OutputStream out, Drawing drawing) {
        Document document = new Document(
                new Rectangle(
                        points(stock.page().rightMm()), points(stock.page().downMm())),
                0,
                0,
                0,
                0);
        try {
            PdfWriter writer = PdfWriter.getInstance(document, out);
            writer.setCloseStream(false);
            // Symbols must keep their size: a viewer that heeds this prints at 100 %.
            writer.addViewerPreference(PdfName.PRINTSCALING, PdfName.NONE);
            document.addTitle(title + ", " + stock.name());
            document.open();
            long printed = drawing.draw(document, writer);
            document.close();
            out.flush();
            return printed;
        } catch (ExceptionConverter fault) {
            throw fault.getException() instanceof IOException broken ? new UncheckedIOException(broken) : fault;
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private LabelPen pen(Document document) {
        return new LabelPen(stock, layout, document.getPageSize().getHeight());
    }

    private int left(int place, LabelRun run) {
        return layout.dots(stock.first().rightMm()
                + run.rightMm()
                + place % stock.columns() * stock.pitch().rightMm());
    }

    private int top(int place, LabelRun run) {
        return layout.dots(stock.first().downMm()
                + run.downMm()
                + place / stock.columns() * stock.pitch().downMm());
    }

    private static float points(double millimetres) {
        return (float) (Math.round(millimetres * POINTS_PER_MM * 100) / 100.0);
    }
}
