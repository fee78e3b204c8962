package org.dentary.codes.sheet;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.dentary.codes.symbol.Symbology;

/**
 * A kind of blank label as data: its sheet or roll, and what is printed on each. All lengths are millimetres from the
 * page's top left corner; a roll is a page of one label.
 *
 * @param code how it is named in addresses, {@code UPPER_SNAKE}
 * @param name in plain words
 * @param material what it is made of and printed with
 * @param uses where such a label lasts
 * @param dpi the printer's dots per inch; every module is a whole number of its dots
 * @param page width and height of the page
 * @param first left and top edge of the first label
 * @param columns labels side by side, at least 1
 * @param rows labels one below another, at least 1
 * @param pitch from one label's left edge to the next one's, and from one's top edge to the next one's
 * @param label width and height of a label
 * @param symbols what is printed, in order; at most one linear symbol
 * @param codePoints size of the grouped code, at least 8 points
 * @param textPoints size of the lines below it, at least 6 points
 * @param textLines how many title lines fit below code and part, at least 0
 */
public record LabelStock(
        String code,
        String name,
        String material,
        Set<Use> uses,
        int dpi,
        Extent page,
        Extent first,
        int columns,
        int rows,
        Extent pitch,
        Extent label,
        List<PrintedSymbol> symbols,
        int codePoints,
        int textPoints,
        int textLines) {

    /** The least size of a code meant to be read by eye, in points. */
    public static final int LEAST_CODE_POINTS = 8;

    private static final int LEAST_TEXT_POINTS = 6;
    private static final int LEAST_DPI = 150;
    private static final double SLACK_MM = 0.1;

    /** Where a label lasts. */
    public enum Use {
        /** On a data form or other paper. */
        FORM("form"),
        /** On a dry bag at room temperature. */
        DRY_BAG("dry bag"),
        /** In a freezer, applied dry before. */
        FROZEN("freezer"),
        /** On a jar of formalin or ethanol. */
        FORMALIN("formalin");

        private final String words;

        Use(String words) {
            this.words = words;
        }

        /** The place in plain words. */
        public String words() {
            return words;
        }
    }

    /** A width and a height, or a place from left and top, in millimetres. */
    public record Extent(double rightMm, double downMm) {
        boolean isFinite() {
            return Double.isFinite(rightMm) && Double.isFinite(downMm);
        }
    }

    /** A symbol and the side of its modules in printer dots. */
    public record PrintedSymbol(Symbology symbology, int moduleDots) {}

    /** @throws IllegalArgumentException naming the stock and the value that cannot be */
    public LabelStock {
        uses = Set.copyOf(uses);
        symbols = List.copyOf(symbols);
        require(code.matches("[A-Z][A-Z0-9_]*"), code, "the code is UPPER_SNAKE");
        require(!name.isBlank() && !material.isBlank() && !uses.isEmpty(), code, "name, material and uses are given");
        require(dpi >= LEAST_DPI, code, "a printer has at least " + LEAST_DPI + " dots per inch");
        require(columns >= 1 && rows >= 1, code, "there is at least one column and one row");
        List.of(page, first, pitch, label).forEach(extent -> require(extent.isFinite(), code, "lengths are numbers"));
        require(label.rightMm() > 0 && label.downMm() > 0, code, "a label has a size");
        requireRoom(code, "the first label, from the left edge of the page,", 0, first.rightMm());
        requireRoom(code, "the first label, from the top of the page,", 0, first.downMm());
        if (columns > 1) {
            requireRoom(code, "a label, from one column to the next,", label.rightMm(), pitch.rightMm());
        }
        if (rows > 1) {
            requireRoom(code, "a label, from one row to the next,", label.downMm(), pitch.downMm());
        }
        requireRoom(
                code,
                "the last column's right edge",
                first.rightMm() + (columns - 1) * pitch.rightMm() + label.rightMm(),
                page.rightMm());
        requireRoom(
                code,
                "the last row's lower edge",
                first.downMm() + (rows - 1) * pitch.downMm() + label.downMm(),
                page.downMm());
        require(!symbols.isEmpty(), code, "a label has a symbol");
        require(
                symbols.stream().filter(s -> s.symbology().isLinear()).count() <= 1
                        && symbols.stream()
                                        .map(PrintedSymbol::symbology)
                                        .distinct()
                                        .count()
                                == symbols.size(),
                code,
                "a symbol is printed once, and one linear symbol at most");
        require(symbols.stream().allMatch(s -> s.moduleDots() >= 1), code, "a module has at least one dot");
        require(codePoints >= LEAST_CODE_POINTS, code, "the code has at least " + LEAST_CODE_POINTS + " points");
        require(textPoints >= LEAST_TEXT_POINTS, code, "text has at least " + LEAST_TEXT_POINTS + " points");
        require(textLines >= 0, code, "there are no fewer than 0 text lines");
    }

    /** How many labels a page holds. */
    public int labelsOnAPage() {
        return columns * rows;
    }

    /** The side of a symbol's modules in print, in millimetres. */
    public double moduleMm(PrintedSymbol symbol) {
        return symbol.moduleDots() * 25.4 / dpi;
    }

    private static void require(boolean holds, String code, String rule) {
        if (!holds) {
            throw new IllegalArgumentException("Label stock " + code + ": it must hold that " + rule + ".");
        }
    }

    /** Die cuts and sheets differ by some hundredths; more than {@link #SLACK_MM} is a fault of the file. */
    private static void requireRoom(String code, String what, double neededMm, double givenMm) {
        if (givenMm < neededMm - SLACK_MM) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "Label stock %s: %s takes %.2f mm and there are %.2f mm, so %.2f mm are missing.",
                    code,
                    what,
                    neededMm,
                    givenMm,
                    neededMm - givenMm));
        }
    }
}
