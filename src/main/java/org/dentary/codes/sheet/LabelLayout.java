package org.dentary.codes.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.dentary.codes.KitStem;
import org.dentary.codes.Part;
import org.dentary.codes.symbol.Symbols;
import org.dentary.platform.paper.PaperFont;

/**
 * Where things lie on the labels of a stock, in whole printer dots from a label's top left corner: the code in clear and
 * the lines below it at the top left, square symbols at the top right, the bars below across the width.
 */
final class LabelLayout {

    /** White kept inside the label's edge, for the play of a die cut or of a printer's feed; common practice, no source. */
    private static final double LEAST_EDGE_MM = 1.0;

    private static final double MOST_EDGE_MM = 2.0;
    private static final double EDGE_OF_WIDTH = 0.03;

    private static final double GAP_MM = 0.6;

    /** Bars are at least 5 mm or 15 % of the symbol's width high, whichever is more (ISO/IEC 15417, from memory). */
    private static final double LEAST_BARS_MM = 5.0;

    private static final double LEAST_BARS_OF_WIDTH = 0.15;
    private static final double MOST_BARS_MM = 15.0;
    private static final int LEAST_PART_POINTS = 8;
    private static final double LEADING = 1.15;
    private static final String WIDEST = "AAAA-AAAA-AA";
    private static final String SAMPLE = new KitStem("A0000000").label(Part.JAW).value();

    private final LabelStock stock;
    private final List<Place> symbols = new ArrayList<>();
    private int textWidth;
    private int textTop;

    private LabelLayout(LabelStock stock) {
        this.stock = stock;
    }

    /**
     * A symbol's place, its quiet zone included.
     *
     * @param left of the quiet zone
     * @param top of the bars, or of the quiet zone
     * @param height of the bars; of a square symbol with its quiet zone
     */
    record Place(LabelStock.PrintedSymbol symbol, int left, int top, int height) {}

    /**
     * The layout of a stock's labels.
     *
     * @throws StockTooSmall naming what does not fit and the millimetres missing
     */
    static LabelLayout of(LabelStock stock) {
        stock.symbols().forEach(symbol -> requireModule(stock, symbol));
        LabelLayout layout = new LabelLayout(stock);
        int edge = layout.edge();
        int gap = layout.dots(GAP_MM);
        int width = layout.dots(stock.label().rightMm()) - 2 * edge;
        int height = layout.dots(stock.label().downMm()) - 2 * edge;
        int right = edge + width;
        int square = 0;
        for (LabelStock.PrintedSymbol symbol : stock.symbols()) {
            if (!symbol.symbology().isLinear()) {
                int side = layout.dotsWide(symbol);
                right -= side;
                layout.symbols.add(new Place(symbol, right, edge, side));
                right -= gap;
                square = Math.max(square, side);
            }
        }
        layout.requireWidth(
                "the code in " + stock.codePoints() + " points beside its symbols",
                layout.codeDots() + (edge + width - right),
                width);
        layout.textWidth = right - edge;
        layout.requireWidth(
                "the name of a part in " + layout.partPoints() + " points beside its symbols",
                layout.partDots() + (edge + width - right),
                width);
        int band = Math.max(square, layout.textDots());
        layout.placeBars(edge, width, height, band, gap);
        layout.textTop = edge + Math.max(0, (layout.bandHeight(height, gap) - layout.textDots()) / 2);
        layout.centerSquares(edge, layout.bandHeight(height, gap));
        return layout;
    }

    /** The places of the stock's symbols. */
    List<Place> symbols() {
        return symbols;
    }

    /** The left edge of all text. */
    int textLeft() {
        return edge();
    }

    /** The top of the first line's space. */
    int textTop() {
        return textTop;
    }

    /** The width that text may take. */
    int textWidth() {
        return textWidth;
    }

    /** The points of the line that names the part. */
    int partPoints() {
        return Math.max(LEAST_PART_POINTS, stock.textPoints() + 1);
    }

    /** The height of a line of text. */
    int lineDots(int points) {
        return (int) Math.ceil(points * LEADING * stock.dpi() / 72);
    }

    /** Millimetres as the nearest whole dots. */
    int dots(double millimetres) {
        return (int) Math.round(millimetres * stock.dpi() / 25.4);
    }

    /** The white kept inside a label's edge, in millimetres. */
    double edgeMm() {
        return millimetres(edge());
    }

    private int edge() {
        double asked = stock.label().rightMm() * EDGE_OF_WIDTH;
        return dots(Math.min(MOST_EDGE_MM, Math.max(LEAST_EDGE_MM, asked)));
    }

    private void placeBars(int edge, int width, int height, int band, int gap) {
        LabelStock.PrintedSymbol bars = stock.symbols().stream()
                .filter(symbol -> symbol.symbology().isLinear())
                .findFirst()
                .orElse(null);
        if (bars == null) {
            requireHeight("what is printed", band, height);
            return;
        }
        int wide = dotsWide(bars);
        requireWidth(bars.symbology().label() + " with its quiet zones", wide, width);
        int least = Math.max(dots(LEAST_BARS_MM), (int) Math.ceil(wide * LEAST_BARS_OF_WIDTH));
        requireHeight(bars.symbology().label() + " below the text", band + gap + least, height);
        int high = Math.min(Math.max(least, dots(MOST_BARS_MM)), height - band - gap);
        symbols.add(new Place(bars, edge + (width - wide) / 2, edge + height - high, high));
    }

    /** The height left above the bars. */
    private int bandHeight(int height, int gap) {
        return symbols.stream()
                .filter(place -> place.symbol().symbology().isLinear())
                .findFirst()
                .map(bars -> height - gap - bars.height())
                .orElse(height);
    }

    private void centerSquares(int edge, int band) {
        symbols.replaceAll(place -> place.symbol().symbology().isLinear()
                ? place
                : new Place(place.symbol(), place.left(), edge + (band - place.height()) / 2, place.height()));
    }

    private int dotsWide(LabelStock.PrintedSymbol symbol) {
        return Symbols.of(symbol.symbology(), SAMPLE).columnsWithQuiet() * symbol.moduleDots();
    }

    private int codeDots() {
        return (int) Math.ceil(PaperFont.codeFace().getWidthPoint(WIDEST, stock.codePoints()) * stock.dpi() / 72);
    }

    private int partDots() {
        return Stream.of(Part.values())
                .mapToInt(part ->
                        (int) Math.ceil(LabelPen.STRONG.getWidthPoint(part.label(), partPoints()) * stock.dpi() / 72))
                .max()
                .orElseThrow();
    }

    private int textDots() {
        return lineDots(stock.codePoints()) + lineDots(partPoints()) + stock.textLines() * lineDots(stock.textPoints());
    }

    private void requireWidth(String what, int needed, int given) {
        if (needed > given) {
            throw new StockTooSmall(stock.code(), what + ", in width,", millimetres(needed), millimetres(given));
        }
    }

    private void requireHeight(String what, int needed, int given) {
        if (needed > given) {
            throw new StockTooSmall(stock.code(), what + ", in height,", millimetres(needed), millimetres(given));
        }
    }

    private double millimetres(int dots) {
        return dots * 25.4 / stock.dpi();
    }

    private static void requireModule(LabelStock stock, LabelStock.PrintedSymbol symbol) {
        double module = stock.moduleMm(symbol);
        if (module < symbol.symbology().leastModuleMm()) {
            throw new StockTooSmall(
                    stock.code(),
                    "a module of " + symbol.symbology().label(),
                    symbol.symbology().leastModuleMm(),
                    module);
        }
    }
}
