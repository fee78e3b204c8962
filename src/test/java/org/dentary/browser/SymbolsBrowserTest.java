package org.dentary.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.nio.file.Path;
import java.util.List;
import org.dentary.codes.LabelCode;
import org.dentary.codes.symbol.Scanner;
import org.dentary.codes.symbol.SymbolImages;
import org.dentary.codes.symbol.Symbology;
import org.dentary.codes.symbol.Symbols;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Symbols as SVG, shown by a browser at sizes at which a module is no whole number of pixels. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SymbolsBrowserTest extends Browser {
    /** With edges snapped to whole pixels, its bars are not read at the first two sizes. */
    private static final String CODE = "DM9N15KZCF";

    @TempDir
    Path folder;

    /** From 1.4 (Code 128) or 2.4 pixels a module on; the page around it is dark. */
    @ParameterizedTest
    @CsvSource({
        "CODE_128, 250",
        "CODE_128, 281",
        "CODE_128, 347",
        "CODE_128, 503",
        "DATA_MATRIX, 47",
        "DATA_MATRIX, 61",
        "DATA_MATRIX, 133",
        "QR, 71",
        "QR, 101",
        "QR, 250"
    })
    void aSymbolIsReadAtAnySize(Symbology symbology, int width) {
        Page page = page(DESK, ColorScheme.DARK);
        page.setContent("<style>:root{color-scheme:dark}body{margin:30px}svg{width:" + width
                + "px;height:auto;display:block}</style>"
                + SymbolImages.svg(Symbols.of(symbology, LabelCode.parse(CODE)), 265));
        Path image = folder.resolve("symbol.png");
        page.locator("svg").screenshot(new Locator.ScreenshotOptions().setPath(image));
        assertEquals(List.of(CODE), Scanner.read(symbology, List.of(image)));
    }
}
