package org.dentary.codes.sheet;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.dentary.codes.symbol.Scanner;

/** The pages of a PDF as a printer of a resolution would dot them, made by pdftoppm (Poppler). */
final class PrintedPages {

    private final LabelStock stock;
    private final int dpi;
    private final List<BufferedImage> pages = new ArrayList<>();

    private PrintedPages(LabelStock stock, int dpi) {
        this.stock = stock;
        this.dpi = dpi;
    }

    /** Dots of the printer's own resolution are black or white; another resolution is shown with grays, as screens do. */
    static PrintedPages of(Path pdf, LabelStock stock, int dpi) throws IOException {
        PrintedPages printed = new PrintedPages(stock, dpi);
        Path root = Files.createTempDirectory(pdf.getParent(), "pages").resolve("page");
        String smooth = dpi == stock.dpi() ? "no" : "yes";
        Scanner.run(List.of(
                "pdftoppm",
                "-png",
                "-gray",
                "-aaVector",
                smooth,
                "-r",
                String.valueOf(dpi),
                pdf.toString(),
                root.toString()));
        try (Stream<Path> files = Files.list(root.getParent())) {
            for (Path file : files.sorted().toList()) {
                printed.pages.add(ImageIO.read(file.toFile()));
            }
        }
        return printed;
    }

    int count() {
        return pages.size();
    }

    BufferedImage page(int index) {
        return pages.get(index);
    }

    /** The label at a place counted from 0 over all pages, cut out where the stock says it lies. */
    BufferedImage label(int place) {
        BufferedImage page = pages.get(place / stock.labelsOnAPage());
        int within = place % stock.labelsOnAPage();
        int x = dots(stock.first().rightMm()
                + within % stock.columns() * stock.pitch().rightMm());
        int y = dots(stock.first().downMm()
                + within / stock.columns() * stock.pitch().downMm());
        int width = Math.min(dots(stock.label().rightMm()), page.getWidth() - x);
        int height = Math.min(dots(stock.label().downMm()), page.getHeight() - y);
        return page.getSubimage(x, y, width, height);
    }

    int dots(double millimetres) {
        return (int) Math.round(millimetres * dpi / 25.4);
    }

    static boolean isDark(BufferedImage image, int x, int y) {
        return (image.getRGB(x, y) & 0xFF) < 128;
    }
}
