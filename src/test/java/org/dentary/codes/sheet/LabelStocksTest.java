package org.dentary.codes.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.dentary.codes.symbol.Symbology;
import org.dentary.platform.StartupFault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LabelStocksTest {

    private static final String HEADER =
            "code,name,material,uses,dpi,pageWidthMm,pageHeightMm,leftMm,topMm,columns,rows,pitchRightMm,pitchDownMm,"
                    + "labelWidthMm,labelHeightMm,symbols,codePoints,textPoints,textLines\n";
    private static final String JAR = "MINE,My roll,paper,FORM,203,50,25,0,0,1,1,50,25,50,25,CODE_128=2,12,6,1";

    @Test
    void comesWithTheStocksThatProgramsAskFor() {
        List<String> codes = LabelStocks.all().stream().map(LabelStock::code).toList();
        assertTrue(
                codes.containsAll(List.of("LETTER_30", "LETTER_80", "A4_21", "JAR_50X25", "VIAL_33X13", "BOX_100X50")));
        assertEquals(30, LabelStocks.named("LETTER_30").orElseThrow().labelsOnAPage());
        assertTrue(LabelStocks.named("NO_SUCH").isEmpty());
    }

    /** What is asked for by name, in millimetres: ISO 216 for A4, ANSI/ASME Y14.1 for letter, else as the name says. */
    @ParameterizedTest
    @CsvSource({
        "LETTER_30, 30, 215.9, 279.4, 66.7, 25.4",
        "LETTER_80, 80, 215.9, 279.4, 44.4, 12.7",
        "A4_21, 21, 210, 297, 63.5, 38.1",
        "JAR_50X25, 1, 50, 25, 50, 25",
        "VIAL_33X13, 1, 33, 13, 33, 13",
        "BOX_100X50, 1, 100, 50, 100, 50"
    })
    void eachStockHasTheMeasuresOfItsName(
            String code, int labels, double pageWide, double pageHigh, double wide, double high) {
        LabelStock stock = LabelStocks.named(code).orElseThrow();
        assertEquals(labels, stock.labelsOnAPage());
        assertEquals(pageWide, stock.page().rightMm(), 0.05);
        assertEquals(pageHigh, stock.page().downMm(), 0.05);
        assertEquals(wide, stock.label().rightMm(), 0.05);
        assertEquals(high, stock.label().downMm(), 0.05);
    }

    @Test
    void aVialHasRoomForDataMatrixAlone() {
        for (LabelStock vial : LabelStocks.all().stream()
                .filter(one -> one.code().startsWith("VIAL"))
                .toList()) {
            assertEquals(
                    List.of(Symbology.DATA_MATRIX),
                    vial.symbols().stream()
                            .map(LabelStock.PrintedSymbol::symbology)
                            .toList());
        }
    }

    @Test
    void modulesHoldToTheStandardsAndJarsCarryBothSymbols() {
        for (LabelStock stock : LabelStocks.all()) {
            for (LabelStock.PrintedSymbol symbol : stock.symbols()) {
                assertTrue(stock.moduleMm(symbol) >= symbol.symbology().leastModuleMm(), stock.code());
            }
        }
        for (String jar : List.of("JAR_50X25", "JAR_50X25_300")) {
            assertEquals(
                    List.of(Symbology.CODE_128, Symbology.DATA_MATRIX),
                    LabelStocks.named(jar).orElseThrow().symbols().stream()
                            .map(LabelStock.PrintedSymbol::symbology)
                            .toList());
        }
    }

    @Test
    void readsAStockOfTheProgramsOwn() {
        LabelStock stock = LabelStocks.read(new StringReader(HEADER + JAR)).get(0);
        assertEquals("MINE", stock.code());
        assertEquals(50, stock.label().rightMm());
        assertEquals(
                new LabelStock.PrintedSymbol(Symbology.CODE_128, 2),
                stock.symbols().get(0));
    }

    /**
     * Millimetres worked by hand: at 203 dpi a dot is 25.4/203 = 0.12512 mm; Code 128 of ten characters takes 165
     * modules with its quiet zones (ISO/IEC 15417); the code in clear is 12 characters of 0.6 em (Courier's width).
     */
    @ParameterizedTest(name = "{0}: {1} instead of {2}")
    @CsvSource({
        // 165 x 3 dots = 61.94 mm into 50 - 2 x 1.5 mm = 47.0 mm
        "three-dot bars on a jar, CODE_128=3, CODE_128=2, 14.94",
        // 165 x 2 dots = 41.29 mm into 33 - 2 x 1 mm = 31.03 mm
        "bars on a vial label, '33,13,33,13', '50,25,50,25', 10.26",
        // a module of one dot, 0.125 mm, below 0.19 mm
        "one-dot bars, CODE_128=1, CODE_128=2, 0.06",
        // "Submission" in 21 points of Helvetica bold (Adobe's metrics): 5.668 em = 119 points = 42.0 mm, beside 80
        // dots of
        // symbol and a gap of 0.6 mm = 10.6 mm, into 47.0 mm
        "part names of 21 points, 'CODE_128=2|DATA_MATRIX=4,8,20', 'CODE_128=2,12,6', 5.6",
        // 12 x 0.6 x 20 points = 144 points = 50.8 mm into 47.0 mm
        "a code of 20 points, 'CODE_128=2,20', 'CODE_128=2,12', 3.8"
    })
    void refusesAStockThatIsTooSmallWithTheMillimetresMissing(
            String desc, String instead, String original, double missingMm) {
        String csv = JAR.replace(original, instead).replace("0,0,1,1,50,25,33,13", "0,0,1,1,33,13,33,13");
        StockTooSmall refusal =
                assertThrows(StockTooSmall.class, () -> LabelStocks.read(new StringReader(HEADER + csv)));
        assertEquals(missingMm, refusal.missingMm(), 0.13, refusal.getMessage());
        assertTrue(refusal.getMessage().contains("mm are missing"), refusal.getMessage());
        assertEquals("MINE", refusal.stock());
    }

    @Test
    void refusesALabelTooLowForBarsBelowItsText() {
        String csv = JAR.replace("50,25,50,25", "50,14,50,14");
        StockTooSmall refusal =
                assertThrows(StockTooSmall.class, () -> LabelStocks.read(new StringReader(HEADER + csv)));
        assertTrue(refusal.getMessage().contains("in height"), refusal.getMessage());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "a module of no dots, CODE_128=0, CODE_128=2",
        "a symbol without dots, CODE_128, CODE_128=2",
        "an unknown symbol, MAXI=3, CODE_128=2",
        "an unknown use, BOILED, FORM",
        "a code of 7 points, '=2,7,6', '=2,12,6'",
        "text of 5 points, '=2,12,5', '=2,12,6'",
        "a label wider than its page, '50,25,60,25', '50,25,50,25'",
        "no rows, '0,0,1,0', '0,0,1,1'",
        "two columns that overlap, '100,25,0,0,2,1,40', '50,25,0,0,1,1,50'",
        "the same symbol twice, CODE_128=2|CODE_128=2, CODE_128=2",
        "a word for a number, two, 203",
        "a code in small letters, mine, MINE"
    })
    void refusesAStockThatCannotBe(String desc, String instead, String original) {
        String csv = HEADER + JAR.replace(original, instead);
        IllegalArgumentException refusal =
                assertThrows(IllegalArgumentException.class, () -> LabelStocks.read(new StringReader(csv)));
        assertTrue(refusal.getMessage().contains("line 2"), refusal.getMessage());
    }

    /** Millimetres worked by hand from the numbers of the line. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "a label wider than its page, '50,25,60,25', '50,25,50,25', takes 60.00 mm and there are 50.00 mm; 10.00",
        "a negative margin, '50,25,-1.5,0', '50,25,0,0', takes 0.00 mm and there are -1.50 mm; 1.50",
        "a second row below the page, '0,0,1,2,50,25', '0,0,1,1,50,25', takes 50.00 mm and there are 25.00 mm; 25.00",
        "columns that overlap, '100,25,0,0,2,1,40', '50,25,0,0,1,1,50', takes 50.00 mm and there are 40.00 mm; 10.00"
    })
    void refusesALabelOutsideItsPageWithTheMillimetresMissing(
            String desc, String instead, String original, String told) {
        String csv = HEADER + JAR.replace(original, instead);
        String message = assertThrows(IllegalArgumentException.class, () -> LabelStocks.read(new StringReader(csv)))
                .getMessage();
        assertTrue(message.contains("line 2") && message.contains("MINE"), message);
        assertTrue(message.contains(told.substring(0, told.indexOf(';'))), message);
        assertTrue(message.contains("so " + told.substring(told.indexOf(';') + 2) + " mm are missing"), message);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "half a dot, CODE_128=2.5, CODE_128=2, whole dots of the printer",
        "an unknown symbol, MAXI=3, CODE_128=2, 'allowed: CODE_128, DATA_MATRIX, QR'",
        "an unknown use, BOILED, FORM, 'allowed: FORM, DRY_BAG, FROZEN, FORMALIN'",
        "a word for a number, two, 203, dpi is 'two'; give a whole number",
        "no number, NaN, ',0,0,1', leftMm is 'NaN'; give millimeters",
        "text lines without a number, '6,x', '6,1', textLines is 'x'; give a whole number",
        "more text than fits, '6,9', '6,1', 'in height, takes'"
    })
    void saysWhatIsAllowedInPlaceOfWhatIsNot(String desc, String instead, String original, String told) {
        String csv = HEADER + JAR.replace(original, original.startsWith(",") ? "," + instead + ",0,1" : instead);
        String message = assertThrows(IllegalArgumentException.class, () -> LabelStocks.read(new StringReader(csv)))
                .getMessage();
        assertTrue(message.contains(told.replace("\"", "")), message);
        assertFalse(message.contains("org.dentary"), message);
    }

    @Test
    void namesAFieldOrALineThatIsMissing() {
        String without = HEADER.replace("textLines", "lines") + JAR;
        String message = assertThrows(IllegalArgumentException.class, () -> LabelStocks.read(new StringReader(without)))
                .getMessage();
        assertTrue(message.contains("line 2: textLines is missing"), message);
        String shorter = HEADER + JAR.substring(0, JAR.lastIndexOf(','));
        assertThrows(IllegalArgumentException.class, () -> LabelStocks.read(new StringReader(shorter)));
        assertThrows(IllegalArgumentException.class, () -> LabelStocks.read(new StringReader(HEADER)));
        assertThrows(IllegalArgumentException.class, () -> LabelStocks.read(new StringReader("")));
    }

    @Test
    void theGuidesExampleIsAStockThatCanBe() throws IOException {
        String guide = Files.readString(Path.of("docs", "labels.md"));
        String example = guide.substring(guide.indexOf(HEADER), guide.indexOf("\n```", guide.indexOf(HEADER)));
        assertEquals(
                List.of("BAG_76X25"),
                LabelStocks.read(new StringReader(example)).stream()
                        .map(LabelStock::code)
                        .toList());
    }

    @Test
    void aProgramsOwnFileIsOfferedAfterTheShippedStocksOrEndsTheStart(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("stocks.csv");
        try {
            Files.writeString(file, HEADER + JAR);
            OwnLabelStocks.read(file);
            assertEquals(
                    "MINE", LabelStocks.all().get(LabelStocks.all().size() - 1).code());
            assertTrue(LabelStocks.named("LETTER_30").isPresent());
            for (String wrong : List.of(JAR.replace("MINE", "LETTER_30"), JAR.replace("CODE_128=2", "CODE_128=3"))) {
                Files.writeString(file, HEADER + wrong);
                StartupFault fault = assertThrows(StartupFault.class, () -> OwnLabelStocks.read(file));
                assertTrue(fault.getMessage().startsWith("DENTARY_LABEL_STOCKS, " + file), fault.getMessage());
            }
            Files.write(file, new byte[] {(byte) 0xff, (byte) 0xfe, 0x00});
            assertThrows(StartupFault.class, () -> OwnLabelStocks.read(file));
        } finally {
            LabelStocks.add(List.of());
        }
    }

    @Test
    void refusesTwoStocksOfOneCode() {
        assertThrows(
                IllegalArgumentException.class, () -> LabelStocks.read(new StringReader(HEADER + JAR + "\n" + JAR)));
    }
}
