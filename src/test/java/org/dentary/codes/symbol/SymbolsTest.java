package org.dentary.codes.symbol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.dentary.codes.KitStem;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Minting;
import org.dentary.codes.Part;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class SymbolsTest {

    @TempDir
    Path folder;

    private final LabelCode code = new Minting(new Random(128)).mint().label(Part.JAW);

    @ParameterizedTest
    @EnumSource(Symbology.class)
    void anImageIsReadByAScannerProgram(Symbology symbology) throws IOException {
        Path image = Files.write(folder.resolve("a.png"), SymbolImages.png(Symbols.of(symbology, code), 4));
        assertEquals(List.of(code.value()), Scanner.read(symbology, List.of(image)));
    }

    @ParameterizedTest
    @EnumSource(Symbology.class)
    void theQuietZoneIsWhiteAndTheSymbolBeginsRightAfterIt(Symbology symbology) throws IOException {
        int module = 3;
        BufferedImage image =
                ImageIO.read(new ByteArrayInputStream(SymbolImages.png(Symbols.of(symbology, code), module)));
        int quiet = symbology.quietModules() * module;
        int middle = image.getHeight() / 2;
        for (int x = 0; x < quiet; x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                assertEquals(0xFFFFFFFF, image.getRGB(x, y));
                assertEquals(0xFFFFFFFF, image.getRGB(image.getWidth() - 1 - x, y));
            }
        }
        boolean dark = false;
        for (int y = 0; y < image.getHeight(); y++) {
            dark |= image.getRGB(quiet, y) == 0xFF000000;
        }
        assertTrue(dark, "no dark module in the first column, row " + middle);
    }

    /**
     * Sizes from the standards: Code 128 has 11 modules a character and 13 for the stop (ISO/IEC 15417), so ten
     * characters with start and check take 145; 16 x 16 is the smallest square Data Matrix that holds ten of our
     * characters (ISO/IEC 16022, table of sizes); QR version 1 is 21 x 21 (ISO/IEC 18004).
     */
    @Test
    void symbolsOfAllCodesHaveTheSizesOfTheStandards() {
        for (KitStem kit : new Minting(new Random(3)).mint(200)) {
            LabelCode any = kit.label(Part.SPARE_7);
            assertEquals(145, Symbols.of(Symbology.CODE_128, any).columns());
            assertEquals(165, Symbols.of(Symbology.CODE_128, any).columnsWithQuiet());
            assertEquals(16, Symbols.of(Symbology.DATA_MATRIX, any).columns());
            assertEquals(16, Symbols.of(Symbology.DATA_MATRIX, any).rows());
            assertEquals(21, Symbols.of(Symbology.QR, any).columns());
        }
        assertEquals(145, Symbols.of(Symbology.CODE_128, digits()).columns());
    }

    @Test
    void aVectorImageHoldsExactMillimetresAndTheSameModules() {
        Symbol symbol = Symbols.of(Symbology.CODE_128, code);
        String svg = SymbolImages.svg(symbol, 254);
        assertTrue(svg.contains("width=\"41.910mm\""), svg);
        Matcher bar = Pattern.compile("M(\\d+) 2h(\\d+)v40").matcher(svg);
        int bars = 0;
        int dark = 0;
        while (bar.find()) {
            int from = Integer.parseInt(bar.group(1)) - 10;
            assertTrue(symbol.isDark(from, 0));
            assertFalse(from > 0 && symbol.isDark(from - 1, 0));
            dark += Integer.parseInt(bar.group(2));
            bars++;
        }
        // Three bars a character: start, ten characters, check; four in the stop (ISO/IEC 15417).
        assertEquals(12 * 3 + 4, bars);
        assertTrue(dark > bars && dark < 145);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, -1, 41})
    void refusesAModuleThatMakesNoImage(int pixels) {
        Symbol symbol = Symbols.of(Symbology.QR, code);
        assertThrows(IllegalArgumentException.class, () -> SymbolImages.png(symbol, pixels));
        assertThrows(IllegalArgumentException.class, () -> SymbolImages.svg(symbol, pixels));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "abc", "A B", "A<B", "AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"})
    void refusesATextThatIsNoCode(String text) {
        assertThrows(IllegalArgumentException.class, () -> Symbols.of(Symbology.DATA_MATRIX, text));
    }

    @Test
    void symbologiesAreNamedInAddresses() {
        for (Symbology symbology : Symbology.values()) {
            assertEquals(symbology, Symbology.named(symbology.word()).orElseThrow());
        }
        assertTrue(Symbology.named("CODE_128").isEmpty());
    }

    /** A code with as many digits as a code can have, which Code 128's set C would shorten. */
    private static String digits() {
        return new KitStem("A1111111").label(Part.SPARE_1).value();
    }
}
