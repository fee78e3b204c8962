package org.dentary.codes.sheet;

import com.lowagie.text.pdf.PdfContentByte;
import java.util.Locale;

/** Draws the labels of a calibration page: outline, center cross, millimetre scales from the center, and what to do. */
final class CalibrationPage {

    private static final int SCALE_MM = 5;
    private static final int SHORT_SCALE_MM = 2;
    private static final double SMALL_MM = 20;
    private static final float TEXT_POINTS = 5.5f;

    private final LabelStock stock;
    private final LabelLayout layout;
    private final LabelPen pen;
    private final LabelRun run;

    CalibrationPage(LabelStock stock, LabelLayout layout, LabelPen pen, LabelRun run) {
        this.stock = stock;
        this.layout = layout;
        this.pen = pen;
        this.run = run;
    }

    void draw(PdfContentByte page, int place, int left, int top) {
        int width = layout.dots(stock.label().rightMm());
        int height = layout.dots(stock.label().downMm());
        int line = layout.lineDots((int) Math.ceil(TEXT_POINTS));
        int x = left + layout.dots(1);
        pen.outline(page, left, top, width, height);
        scales(page, left + width / 2, top + height / 2);
        pen.write(page, TEXT_POINTS, heading(place), x, top + layout.dots(0.6) + line);
        pen.write(page, TEXT_POINTS, advice(place), x, top + height - layout.dots(0.6));
    }

    private void scales(PdfContentByte page, int x, int y) {
        int reachMm = stock.label().downMm() < SMALL_MM ? SHORT_SCALE_MM : SCALE_MM;
        int reach = layout.dots(reachMm);
        pen.line(page, x - reach, y, x + reach, y);
        pen.line(page, x, y - reach, x, y + reach);
        for (int mm = -reachMm; mm <= reachMm; mm++) {
            int tick = layout.dots(mm == 0 ? 0 : mm % SCALE_MM == 0 ? 1 : 0.5);
            int at = layout.dots(mm);
            pen.line(page, x + at, y - tick, x + at, y + tick);
            pen.line(page, x - tick, y + at, x + tick, y + at);
        }
    }

    private String heading(int place) {
        return "Label " + (place + 1) + (place == 0 ? ": " + stock.name().replaceAll(",.*", "") : "");
    }

    private String advice(int place) {
        return switch (place) {
            case 0 -> String.format(Locale.ROOT, "shift %+.1f mm right, %+.1f mm down", run.rightMm(), run.downMm());
            case 1 -> "Print at 100 %, not fitted to the page.";
            case 2 -> "Hold it against a sheet of labels.";
            case 3 -> "Set the shift to what is off, in mm.";
            default -> "";
        };
    }
}
