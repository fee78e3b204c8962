package org.dentary.codes.sheet;

import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.PdfContentByte;
import java.util.Locale;
import org.dentary.codes.symbol.Symbol;
import org.dentary.codes.symbol.Symbols;
import org.dentary.platform.paper.PaperFont;

/**
 * Draws labels on PDF pages. Symbols are rectangles on the printer's dots: within a page's own scale of one unit a dot,
 * counted from the page's top left corner, each rectangle covers its whole dots less a twentieth at each edge, so that a
 * printer that blackens every dot it touches makes no bar wider than it should be.
 */
final class LabelPen {

    static final BaseFont STRONG = PaperFont.builtIn(BaseFont.HELVETICA_BOLD);
    private static final double SHY = 0.05;
    private static final BaseFont CODE = PaperFont.codeFace();
    private static final BaseFont PLAIN = PaperFont.textFace();
    private static final String ELLIPSIS = "...";

    private final LabelStock stock;
    private final LabelLayout layout;
    private final float pageHeight;

    LabelPen(LabelStock stock, LabelLayout layout, float pageHeight) {
        this.stock = stock;
        this.layout = layout;
        this.pageHeight = pageHeight;
    }

    /** Draws one label whose top left corner is at a dot of the page. */
    void draw(PdfContentByte page, LabelContent content, int left, int top) {
        StringBuilder path = new StringBuilder();
        for (LabelLayout.Place place : layout.symbols()) {
            Symbol symbol = Symbols.of(place.symbol().symbology(), content.code());
            if (symbol.symbology().isLinear()) {
                bars(path, symbol, place, left, top);
            } else {
                squares(path, symbol, place, left, top);
            }
        }
        fill(page, path);
        int x = left + layout.textLeft();
        int y = top + layout.textTop() + layout.lineDots(stock.codePoints());
        text(page, CODE, stock.codePoints(), content.code().grouped(), x, y);
        y += layout.lineDots(layout.partPoints());
        text(page, STRONG, layout.partPoints(), content.code().part().label(), x, y);
        for (String line : content.lines()
                .subList(0, Math.min(stock.textLines(), content.lines().size()))) {
            y += layout.lineDots(stock.textPoints());
            text(page, PLAIN, stock.textPoints(), fitting(line), x, y);
        }
    }

    /** Draws a rectangle's outline, a tenth of a millimetre thick at least. */
    void outline(PdfContentByte page, int left, int top, int width, int height) {
        page.setLineWidth(0.3f);
        page.rectangle(points(left), pageHeight - points(top + height), points(width), points(height));
        page.stroke();
    }

    /** Draws a line between two dots. */
    void line(PdfContentByte page, int fromX, int fromY, int toX, int toY) {
        page.setLineWidth(0.3f);
        page.moveTo(points(fromX), pageHeight - points(fromY));
        page.lineTo(points(toX), pageHeight - points(toY));
        page.stroke();
    }

    /** Writes a line of text in the embedded font, its foot a quarter of its size above a dot. */
    void write(PdfContentByte page, float size, String text, int x, int y) {
        text(page, PLAIN, size, text, x, y);
    }

    private void bars(StringBuilder path, Symbol symbol, LabelLayout.Place place, int left, int top) {
        int module = place.symbol().moduleDots();
        int x = left + place.left() + symbol.symbology().quietModules() * module;
        for (Symbol.Run run : symbol.darkInRow(0)) {
            rectangle(path, x + run.from() * module, top + place.top(), run.length() * module, place.height());
        }
    }

    /** Rows and columns are drawn one over the other, so that no white hair shows between modules that touch. */
    private void squares(StringBuilder path, Symbol symbol, LabelLayout.Place place, int left, int top) {
        int module = place.symbol().moduleDots();
        int quiet = symbol.symbology().quietModules() * module;
        int x = left + place.left() + quiet;
        int y = top + place.top() + quiet;
        for (int row = 0; row < symbol.rows(); row++) {
            for (Symbol.Run run : symbol.darkInRow(row)) {
                rectangle(path, x + run.from() * module, y + row * module, run.length() * module, module);
            }
        }
        for (int column = 0; column < symbol.columns(); column++) {
            for (Symbol.Run run : symbol.darkInColumn(column)) {
                if (run.length() > 1) {
                    rectangle(path, x + column * module, y + run.from() * module, module, run.length() * module);
                }
            }
        }
    }

    private static void rectangle(StringBuilder path, int x, int y, int width, int height) {
        path.append(x + SHY).append(' ').append(y + SHY).append(' ');
        path.append(width - 2 * SHY).append(' ').append(height - 2 * SHY).append(" re\n");
    }

    private void fill(PdfContentByte page, StringBuilder path) {
        // Written by hand because the library rounds numbers above 1 to hundredths, too coarse for a page's width of
        // dots.
        String scale = String.format(Locale.ROOT, "%.9f", 72.0 / stock.dpi());
        page.setLiteral("q " + scale + " 0 0 -" + scale + " 0 " + String.format(Locale.ROOT, "%.2f", pageHeight)
                + " cm\n" + path + "f\nQ\n");
    }

    private void text(PdfContentByte page, BaseFont font, float size, String text, int x, int y) {
        page.beginText();
        page.setFontAndSize(font, size);
        page.setTextMatrix(points(x), pageHeight - points(y) + size * 0.25f);
        page.showText(text);
        page.endText();
    }

    private String fitting(String line) {
        float room = points(layout.textWidth());
        if (PLAIN.getWidthPoint(line, stock.textPoints()) <= room) {
            return line;
        }
        int kept = line.length();
        while (kept > 0 && PLAIN.getWidthPoint(line.substring(0, kept) + ELLIPSIS, stock.textPoints()) > room) {
            kept = line.offsetByCodePoints(kept, -1);
        }
        return line.substring(0, kept).replaceAll("[\\p{P}\\s]+$", "") + ELLIPSIS;
    }

    private float points(int dots) {
        return (float) (dots * 72.0 / stock.dpi());
    }
}
