package org.dentary.codes.symbol;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Locale;
import javax.imageio.ImageIO;

/** A symbol as an image file, black on white with its quiet zone, every module the same whole size. */
public final class SymbolImages {

    /** The bars' height in modules: about a quarter of a label code's width, well above the 15 % that scanning needs. */
    private static final int BAR_MODULES = 40;

    private static final int MOST_PIXELS = 40;
    private static final int LEAST_MICROMETRES = 100;
    private static final int MOST_MICROMETRES = 10_000;

    private SymbolImages() {}

    /**
     * A PNG image of two colors.
     *
     * @param modulePixels the side of a module, 1 to 40 pixels
     * @throws IllegalArgumentException outside that range
     */
    public static byte[] png(Symbol symbol, int modulePixels) {
        requireWithin(modulePixels, 1, MOST_PIXELS, "pixels");
        int quiet = symbol.symbology().quietModules();
        BufferedImage image = new BufferedImage(
                symbol.columnsWithQuiet() * modulePixels,
                rowsWithQuiet(symbol) * modulePixels,
                BufferedImage.TYPE_BYTE_BINARY);
        Graphics2D pen = image.createGraphics();
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, image.getWidth(), image.getHeight());
        pen.setColor(Color.BLACK);
        int height = symbol.symbology().isLinear() ? BAR_MODULES : 1;
        for (int row = 0; row < symbol.rows(); row++) {
            for (Symbol.Run run : symbol.darkInRow(row)) {
                pen.fillRect(
                        (quiet + run.from()) * modulePixels,
                        (top(symbol) + row) * modulePixels,
                        run.length() * modulePixels,
                        height * modulePixels);
            }
        }
        pen.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", bytes);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        return bytes.toByteArray();
    }

    /**
     * An SVG image whose size in print is exact. Where it is shown at another size its edges are left gray: snapped to whole
     * pixels, bars of one and of two modules come out alike.
     *
     * @param moduleMicrometres the side of a module, 100 to 10,000 micrometres
     * @throws IllegalArgumentException outside that range
     */
    public static String svg(Symbol symbol, int moduleMicrometres) {
        requireWithin(moduleMicrometres, LEAST_MICROMETRES, MOST_MICROMETRES, "micrometres");
        int quiet = symbol.symbology().quietModules();
        int columns = symbol.columnsWithQuiet();
        int rows = rowsWithQuiet(symbol);
        int height = symbol.symbology().isLinear() ? BAR_MODULES : 1;
        StringBuilder path = new StringBuilder();
        for (int row = 0; row < symbol.rows(); row++) {
            for (Symbol.Run run : symbol.darkInRow(row)) {
                path.append("M%d %dh%dv%dh-%dz"
                        .formatted(quiet + run.from(), top(symbol) + row, run.length(), height, run.length()));
            }
        }
        return """
                <svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %d %d" role="img">
                <title>%s %s</title>
                <path fill="#fff" d="M0 0h%dv%dh-%dz"/>
                <path d="%s"/>
                </svg>
                """.formatted(
                        millimetres(columns, moduleMicrometres),
                        millimetres(rows, moduleMicrometres),
                        columns,
                        rows,
                        symbol.symbology().label(),
                        symbol.text(),
                        columns,
                        rows,
                        columns,
                        path);
    }

    private static int rowsWithQuiet(Symbol symbol) {
        return symbol.symbology().isLinear() ? BAR_MODULES + 2 * top(symbol) : symbol.rows() + 2 * top(symbol);
    }

    /** Linear symbols need no white above and below; two modules keep the bars off the image's edge. */
    private static int top(Symbol symbol) {
        return symbol.symbology().isLinear() ? 2 : symbol.symbology().quietModules();
    }

    private static String millimetres(int modules, int moduleMicrometres) {
        return String.format(Locale.ROOT, "%.3f", modules * moduleMicrometres / 1000.0);
    }

    private static void requireWithin(int module, int least, int most, String unit) {
        if (module < least || module > most) {
            throw new IllegalArgumentException(
                    "A module is %d to %d %s wide, not %d".formatted(least, most, unit, module));
        }
    }
}
