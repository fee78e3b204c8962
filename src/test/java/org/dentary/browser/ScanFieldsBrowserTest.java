package org.dentary.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Locale;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.kit.KitFixture;
import org.dentary.kit.LabelOfKit;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.story.dossier.DossierFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every field that asks for a scan: a wrong one is heard, seen and told, and the field is ready for the next. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ScanFieldsBrowserTest extends Browser {
    /** Not in the alphabet at its fifth character. */
    private static final String WRONG = "A2C4B6H8JK";

    @Inject
    SeasonFixture season;

    @Inject
    KitFixture kits;

    @Inject
    DossierFixture tissue;

    @BeforeEach
    void season() {
        season.ensure();
    }

    @ParameterizedTest
    @CsvSource({
        "/kits/scan-back, next",
        "/find?q=A2C4B6H8JK, again",
        "/intake, kit",
        "/practice/panel, kit",
        "/stub, code",
        "/boxes/{box}, content"
    })
    void aWrongScanIsHeardSeenToldAndReplacedByTheNext(String path, String field) {
        Page page = listening(signedIn(PHONE, Role.COORDINATOR));
        page.navigate(path.replace("{box}", path.contains("{box}") ? anOpenBox() : ""));
        until(page, "document.activeElement.id === '" + field + "'");
        scan(page, WRONG);
        until(page, "document.activeElement.id === '" + field + "'");
        assertTrue(page.locator("main .fault[role=alert]").textContent().contains("character 5 is B"), path);
        assertTrue(page.locator("main .fault[role=alert]").isVisible(), path);
        assertTrue((Boolean) page.evaluate("document.body.classList.contains('wrong-scan')"), path + " flashes");
        assertEquals(2, page.evaluate("window.heard"), path + ": two low tones");
        assertEquals(
                true,
                page.evaluate("document.getElementById(document.activeElement.getAttribute('aria-describedby')"
                        + ".split(' ')[0]).matches('.fault')"),
                path + ": the field is described by the fault");
        // A scanner does not empty the field first.
        page.keyboard().type("X");
        assertEquals("X", page.inputValue("#" + field), path);
    }

    @Test
    void twoLabelsToCompareAreScannedOneAfterTheOther() {
        Page page = listening(signedIn(PHONE, Role.COORDINATOR));
        page.navigate("/animals/mix-ups");
        until(page, "document.activeElement.id === 'kit'");
        page.keyboard().type(kits.aKit(Part.JAW).get(0).code());
        page.keyboard().press("Enter");
        until(page, "document.activeElement.id === 'with'");
        scan(page, WRONG);
        assertTrue(page.locator("main .fault[role=alert]").textContent().contains("character 5 is B"));
        assertEquals(2, page.evaluate("window.heard"));
    }

    @Test
    void whatAScannerSendsAroundACodeAndCapsLockDoNotMatter() {
        List<LabelOfKit> kit = kits.aKit(Part.JAW, Part.NODE_LEFT, Part.FORM, Part.STUB);
        Page page = listening(signedIn(PHONE, Role.SAMPLER));
        page.navigate("/kits/scan-back");
        scan(page, "]C0" + kit.get(0).code());
        scan(page, "]d2" + kit.get(1).code().toLowerCase(Locale.ROOT));
        assertTrue(page.locator("main .done").textContent().contains("2 scans, one kit"));
        assertEquals(1, page.evaluate("window.heard"), "one high tone: taken");
        scan(page, "]Q1" + kit.get(2).code());
        page.locator("#next").fill("\u0002]C1" + kit.get(3).code() + "\u0003");
        // Tab as suffix, as fast as a scanner is.
        page.waitForNavigation(() -> quickly(page, "#next", "Tab"));
        assertTrue(page.locator("main .done").textContent().contains("4 scans, one kit"));
    }

    @Test
    void aTabAfterOneOfManyCodesBeginsTheNextLine() {
        Page page = signedIn(PHONE, Role.SAMPLER);
        page.navigate("/custody");
        page.locator("#codes").fill("MC16G457JC");
        quickly(page, "#codes", "Tab");
        page.keyboard().type("X");
        assertEquals("MC16G457JC\nX", page.inputValue("#codes"));
    }

    @Test
    void aScanWhileAListOfChoicesHasTheCursorChangesNoChoice() {
        LabelOfKit jaw = kits.aKit(Part.JAW).get(0);
        Page page = signedIn(PHONE, Role.COORDINATOR);
        page.navigate("/kits/labels/" + jaw.code());
        page.locator("#stock").selectOption("A4_21");
        page.evaluate("""
                () => {
                    const list = document.querySelector("#stock");
                    const key = (key) => list.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true }));
                    list.focus();
                    key("J");
                    list.value = "JAR_50X25";
                    key("4");
                }
                """);
        assertEquals("A4_21", page.inputValue("#stock"));
        assertEquals("scan", page.evaluate("document.activeElement.id"));
        assertEquals("J", page.inputValue("#scan"), "the second character is typed into it by the key itself");
    }

    /** Two keys at once, faster than a hand, the second one this. */
    private static void quickly(Page page, String field, String key) {
        page.evaluate("""
                ([field, key]) => {
                    const at = document.querySelector(field);
                    at.focus();
                    for (const one of ["C", key]) {
                        at.dispatchEvent(new KeyboardEvent("keydown", { key: one, bubbles: true, cancelable: true }));
                    }
                }
                """, List.of(field, key));
    }

    private String anOpenBox() {
        String box = kits.aBlock(1, Part.BOX).labels().get(0).code();
        tissue.put("sampler", "/boxes/" + box, "{\"place\":\"T_STATION_1\"}").statusCode(201);
        return box;
    }

    /** Counts the tones that the page begins, from its next load on. */
    private static Page listening(Page page) {
        page.addInitScript("window.heard = 0; const start = OscillatorNode.prototype.start;"
                + "OscillatorNode.prototype.start = function (...when) { window.heard++; start.apply(this, when); };");
        return page;
    }
}
