package org.dentary.codes.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.dentary.codes.Part;
import org.dentary.codes.symbol.Scanner;
import org.dentary.codes.symbol.Symbol;
import org.dentary.codes.symbol.Symbology;
import org.dentary.codes.symbol.Symbols;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LabelSheetTest {

    @TempDir
    Path folder;

    static Stream<Arguments> stocksAndResolutions() {
        return LabelStocks.all().stream()
                .flatMap(stock -> Stream.of(203, 300).map(dpi -> Arguments.of(stock.code(), dpi)));
    }

    @ParameterizedTest
    @MethodSource("stocksAndResolutions")
    void everySymbolOnEveryLabelIsReadByAScannerProgram(String code, int dpi) throws IOException {
        LabelStock stock = LabelStocks.named(code).orElseThrow();
        List<LabelContent> labels = LabelFixture.labels(Math.max(4, stock.labelsOnAPage()));
        PrintedPages pages = PrintedPages.of(printed(stock, labels, LabelRun.PLAIN), stock, dpi);
        List<Path> images = new ArrayList<>();
        for (int i = 0; i < labels.size(); i++) {
            images.add(cut(pages, i));
        }
        List<String> codes = labels.stream().map(label -> label.code().value()).toList();
        for (LabelStock.PrintedSymbol symbol : stock.symbols()) {
            assertEquals(codes, Scanner.read(symbol.symbology(), images), symbol.toString());
        }
    }

    static Stream<LabelStock> stocksWithBars() {
        return LabelStocks.all().stream()
                .filter(stock -> stock.symbols().get(0).symbology().isLinear());
    }

    @ParameterizedTest
    @MethodSource("stocksWithBars")
    void barsAreWholeDotsWideOnTheStocksOwnPrinter(LabelStock stock) throws IOException {
        LabelStock.PrintedSymbol bars = stock.symbols().get(0);
        int dpi = stock.dpi();
        LabelContent content = LabelFixture.labels(1).get(0);
        BufferedImage label = PrintedPages.of(printed(stock, List.of(content), LabelRun.PLAIN), stock, dpi)
                .label(0);
        Symbol symbol = Symbols.of(bars.symbology(), content.code());
        List<Integer> expected = symbol.darkInRow(0).stream()
                .map(run -> run.length() * bars.moduleDots())
                .toList();
        int y = label.getHeight() - (int) Math.round(3.5 * dpi / 25.4);
        assertEquals(expected, darkRuns(label, y));
    }

    @Test
    void textStandsClearOfEverySymbolsQuietZone() throws IOException {
        for (LabelStock stock : LabelStocks.all()) {
            LabelContent content = LabelFixture.labels(1).get(0);
            BufferedImage label = PrintedPages.of(printed(stock, List.of(content), LabelRun.PLAIN), stock, stock.dpi())
                    .label(0);
            for (LabelLayout.Place place : LabelLayout.of(stock).symbols()) {
                int quiet = place.symbol().symbology().quietModules()
                        * place.symbol().moduleDots();
                int wide =
                        Symbols.of(place.symbol().symbology(), content.code()).columnsWithQuiet()
                                * place.symbol().moduleDots();
                for (int y = place.top(); y < place.top() + place.height(); y++) {
                    for (int x = 0; x < quiet; x++) {
                        assertFalse(PrintedPages.isDark(label, place.left() + x, y), stock.code() + " left");
                        assertFalse(
                                PrintedPages.isDark(label, place.left() + wide - 1 - x, y), stock.code() + " right");
                    }
                }
            }
        }
    }

    @Test
    void beginsAtALabelOfAPartUsedSheetAndGoesOnWithTheNext() throws IOException {
        LabelStock stock = LabelStocks.named("LETTER_80").orElseThrow();
        List<LabelContent> labels = LabelFixture.labels(5);
        PrintedPages pages = PrintedPages.of(printed(stock, labels, LabelRun.PLAIN.startingAt(78)), stock, 300);
        assertEquals(2, pages.count());
        assertFalse(hasDark(pages.label(76)));
        assertEquals(
                labels.stream().map(label -> label.code().value()).toList(),
                Scanner.read(
                        Symbology.DATA_MATRIX,
                        List.of(cut(pages, 77), cut(pages, 78), cut(pages, 79), cut(pages, 80), cut(pages, 81))));
        assertFalse(hasDark(pages.label(82)));
    }

    @Test
    void printsIdenticalCopiesOfAPartTogetherAndLeavesOutWhatHasNone() throws IOException {
        LabelStock stock = LabelStocks.named("VIAL_33X13").orElseThrow();
        List<LabelContent> labels = LabelFixture.labels(4);
        LabelRun run = LabelRun.PLAIN.withCopies(Map.of(Part.NODE_LEFT, 2, Part.FORM, 0));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertEquals(4, LabelSheet.on(stock).write(labels.iterator(), run, out));
        Path pdf = Files.write(folder.resolve("copies.pdf"), out.toByteArray());
        PrintedPages pages = PrintedPages.of(pdf, stock, 203);
        List<String> read = Scanner.read(
                Symbology.DATA_MATRIX,
                IntStream.range(0, pages.count()).mapToObj(i -> cut(pages, i)).toList());
        String left = labels.get(1).code().value();
        assertEquals(
                List.of(
                        labels.get(0).code().value(),
                        left,
                        left,
                        labels.get(2).code().value()),
                read);
    }

    @Test
    void aShiftMovesEverythingByThatManyMillimetres() throws IOException {
        LabelStock stock = LabelStocks.named("A4_21").orElseThrow();
        List<LabelContent> labels = LabelFixture.labels(1);
        BufferedImage plain = PrintedPages.of(printed(stock, labels, LabelRun.PLAIN), stock, 300)
                .page(0);
        BufferedImage shifted = PrintedPages.of(printed(stock, labels, LabelRun.PLAIN.shifted(2, -3)), stock, 300)
                .page(0);
        int[] from = firstDark(plain);
        int[] to = firstDark(shifted);
        assertEquals(2 * 300 / 25.4, to[0] - from[0], 1.0);
        assertEquals(-3 * 300 / 25.4, to[1] - from[1], 1.0);
    }

    @Test
    void saysInClearWhatTheSymbolsSay() throws IOException {
        LabelStock stock = LabelStocks.named("JAR_50X25").orElseThrow();
        LabelContent content = LabelContent.of(
                LabelFixture.labels(1).get(0).code(), "Łąka Ranch, Ñandú Creek", "second line", "third line");
        Path pdf = printed(stock, List.of(content), LabelRun.PLAIN);
        String text = String.join("\n", Scanner.run(List.of("pdftotext", pdf.toString(), "-")));
        assertTrue(text.contains(content.code().grouped()), text);
        assertTrue(text.contains(content.code().part().label()), text);
        assertTrue(text.contains("Łąka Ranch, Ñandú Creek"), text);
        assertFalse(text.contains("third line"), text);
    }

    @Test
    void aLineTooLongIsCutWithAnEllipsis() throws IOException {
        LabelStock stock = LabelStocks.named("JAR_50X25").orElseThrow();
        Path pdf = printed(stock, LabelFixture.labels(1), LabelRun.PLAIN);
        String text = String.join("\n", Scanner.run(List.of("pdftotext", pdf.toString(), "-")));
        assertTrue(text.matches("(?s).*Pine Ridge check station[^\\n]*\\.\\.\\..*"), text);
        assertFalse(text.contains("landing"), text);
    }

    @Test
    void noCommaStandsBeforeTheEllipsis() throws IOException {
        LabelStock stock = LabelStocks.named("VIAL_33X13").orElseThrow();
        LabelContent content = LabelContent.of(
                LabelFixture.labels(1).get(0).code(), "i, i, i, i, i, i, i, i, i, i, i, i, i, i, i, i, i");
        Path pdf = printed(stock, List.of(content), LabelRun.PLAIN);
        String text = String.join("\n", Scanner.run(List.of("pdftotext", pdf.toString(), "-")));
        assertTrue(text.matches("(?s).*i, i\\.\\.\\..*"), text);
    }

    @Test
    void theCalibrationPageOutlinesEveryLabelWhereItIsPrinted() throws IOException {
        for (LabelStock stock : LabelStocks.all()) {
            if (stock.labelsOnAPage() == 1) {
                continue;
            }
            Path pdf = folder.resolve("calibration.pdf");
            try (OutputStream out = Files.newOutputStream(pdf)) {
                LabelSheet.on(stock).writeCalibration(LabelRun.PLAIN, out);
            }
            PrintedPages pages = PrintedPages.of(pdf, stock, 300);
            assertEquals(1, pages.count());
            for (int place = 0; place < stock.labelsOnAPage(); place++) {
                BufferedImage label = pages.label(place);
                int dark = 0;
                for (int x = 0; x < label.getWidth(); x++) {
                    dark += PrintedPages.isDark(label, x, 0) || PrintedPages.isDark(label, x, 1) ? 1 : 0;
                }
                assertTrue(dark > label.getWidth() * 0.95, stock.code() + " label " + place);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, -1, 31})
    void refusesToBeginWhereThereIsNoLabel(int startAt) {
        LabelStock stock = LabelStocks.named("LETTER_30").orElseThrow();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThrows(
                IllegalArgumentException.class,
                () -> LabelSheet.on(stock)
                        .write(LabelFixture.labels(1).iterator(), LabelRun.PLAIN.startingAt(startAt), out));
        assertEquals(0, out.size());
    }

    @Test
    void refusesNothingToPrintAndNumbersOutOfRange() {
        LabelSheet sheet = LabelSheet.on(LabelStocks.all().get(0));
        Iterator<LabelContent> none = Collections.emptyIterator();
        OutputStream out = OutputStream.nullOutputStream();
        assertThrows(IllegalArgumentException.class, () -> sheet.write(none, LabelRun.PLAIN, out));
        Map<Part, Integer> tooMany = Map.of(Part.JAW, 51);
        assertThrows(IllegalArgumentException.class, () -> LabelRun.PLAIN.withCopies(tooMany));
        assertThrows(IllegalArgumentException.class, () -> LabelRun.PLAIN.shifted(10.5, 0));
        assertThrows(IllegalArgumentException.class, () -> LabelRun.PLAIN.shifted(0, Double.NaN));
    }

    @Test
    void aBrokenStreamIsReportedAsSuch() {
        OutputStream broken = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("the browser went away");
            }
        };
        LabelSheet sheet = LabelSheet.on(LabelStocks.all().get(0));
        Iterator<LabelContent> labels = LabelFixture.labels(90).iterator();
        assertThrows(UncheckedIOException.class, () -> sheet.write(labels, LabelRun.PLAIN, broken));
    }

    @Test
    void theCoverSheetSaysWhatItWasGiven() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        CoverSheet cover = new CoverSheet(
                "Labels for Pine Ridge",
                List.of("Block 14"),
                CoverSheet.LABELING_ADVICE,
                List.of("Wear gloves."),
                "Ask the coordinator.");
        cover.write(CoverSheet.Paper.A4, out);
        Path pdf = Files.write(folder.resolve("cover.pdf"), out.toByteArray());
        String text = String.join(" ", Scanner.run(List.of("pdftotext", "-layout", pdf.toString(), "-")))
                .replaceAll("\\s+", " ");
        assertTrue(text.contains("Labels for Pine Ridge"), text);
        assertTrue(text.contains("Wear gloves."), text);
        CoverSheet.LABELING_ADVICE.forEach(line -> assertTrue(text.contains(line), line));
        assertThrows(IllegalArgumentException.class, () -> new CoverSheet(" ", List.of(), List.of("x"), List.of(), ""));
    }

    private Path printed(LabelStock stock, List<LabelContent> labels, LabelRun run) throws IOException {
        Path pdf = Files.createTempFile(folder, "labels", ".pdf");
        try (OutputStream out = Files.newOutputStream(pdf)) {
            LabelSheet.on(stock).write(labels.iterator(), run, out);
        }
        return pdf;
    }

    private Path cut(PrintedPages pages, int place) {
        try {
            Path image = Files.createTempFile(folder, "label", ".png");
            ImageIO.write(pages.label(place), "png", image.toFile());
            return image;
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static List<Integer> darkRuns(BufferedImage image, int y) {
        List<Integer> runs = new ArrayList<>();
        int run = 0;
        for (int x = 0; x <= image.getWidth(); x++) {
            if (x < image.getWidth() && PrintedPages.isDark(image, x, y)) {
                run++;
            } else if (run > 0) {
                runs.add(run);
                run = 0;
            }
        }
        return runs;
    }

    private static boolean hasDark(BufferedImage image) {
        return firstDark(image)[0] >= 0;
    }

    /** The leftmost dark column and the topmost dark row, -1 where all is white. */
    private static int[] firstDark(BufferedImage image) {
        int[] first = {-1, -1};
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                if (PrintedPages.isDark(image, x, y)) {
                    first[0] = first[0] < 0 ? x : Math.min(first[0], x);
                    first[1] = first[1] < 0 ? y : first[1];
                }
            }
        }
        return first;
    }
}
