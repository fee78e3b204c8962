package org.dentary.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.kit.IssuedBlock;
import org.dentary.kit.KitFixture;
import org.dentary.kit.LabelOfKit;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PortalBrowserTest extends Browser {
    @Inject
    SeasonFixture season;

    @Inject
    KitFixture kits;

    @BeforeEach
    void season() {
        season.ensure();
    }

    @Test
    void theHomeOfASamplerAndOfACoordinatorIsReadableAndReachable() {
        kits.aBlock(3, Part.JAW);
        look(Role.SAMPLER, "/", "home-sampler");
        look(Role.COORDINATOR, "/", "home-coordinator");
    }

    @Test
    void theKitPagesAreReadableAndReachable() {
        IssuedBlock block = kits.aBlock(3, Part.JAW, Part.NODE_LEFT, Part.FORM);
        look(Role.COORDINATOR, "/kits", "kits");
        look(Role.COORDINATOR, "/kits/issue", "kits-issue");
        look(Role.COORDINATOR, "/kits/" + block.id(), "kits-block");
        look(Role.COORDINATOR, "/kits/" + block.id() + "/printing", "kits-printing");
        look(Role.COORDINATOR, "/kits/" + block.id() + "/printing?start=99&offsetX=x", "kits-printing-faulty");
        look(Role.COORDINATOR, "/kits/labels/" + block.labels().get(0).code(), "kits-label");
        look(Role.SAMPLER, "/find?q=A2C4B6H8JK", "find-wrong");
        look(null, "/problems/LABEL_BOUND", "problem");
        look(null, "/problems", "problems");
    }

    @Test
    void aPrintedPageLeavesNavigationAndFormsBehind() {
        IssuedBlock block = kits.aBlock(3, Part.JAW);
        Page page = signedIn(DESK, Role.COORDINATOR);
        page.navigate("/kits/" + block.id());
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(com.microsoft.playwright.options.Media.PRINT));
        shoot(page, "kits-block-print");
        assertTrue(page.locator("h1").isVisible());
        for (String hidden : List.of(".band", ".rail", ".foot", "main form >> nth=0", ".csv >> nth=0")) {
            assertTrue(page.locator(hidden).isHidden(), hidden);
        }
    }

    @Test
    void aBlockIsIssuedByKeyboardAndItsFaultsStandBesideTheirFields() {
        Page page = signedIn(PHONE, Role.COORDINATOR);
        page.navigate("/kits/issue");
        page.locator("#kits").fill("two");
        page.locator("button.main").press("Enter");
        page.locator(".fault").waitFor();
        shoot(page, "kits-issue-faulty");
        assertTrue(page.locator("#kits-error").textContent().contains("\"two\""));
        assertEquals("two", page.locator("#kits").inputValue(), "what was typed is shown again");
        assertTrue(page.locator("#station-error").isVisible());
        assertAccessible(page);
        page.locator("#kits").fill("12");
        page.locator("#station").selectOption(SeasonFixture.STATION);
        page.locator("button.main").press("Enter");
        page.waitForURL(url -> url.matches(".*/kits/[0-9a-f-]{36}"));
        assertEquals("12 kits for Station 1", page.locator("h1").textContent());
    }

    @Test
    void aScannerFindsALabelFromAnywhereAndAWrongScanIsHeardAndSeen() {
        LabelOfKit jaw = kits.aKit(Part.JAW).get(0);
        Page page = listening(signedIn(PHONE, Role.SAMPLER));
        page.navigate("/");
        scan(page, jaw.code());
        assertTrue(page.url().endsWith("/kits/labels/" + jaw.code()), page.url());
        page.navigate("/");
        scan(page, "A2C4B6H8JK");
        assertTrue(page.locator(".fault").textContent().contains("character 5 is B"));
        assertTrue((Boolean) page.evaluate("document.body.classList.contains('wrong-scan')"), "it flashes");
        assertEquals(2, page.evaluate("window.heard"), "two low tones");
        assertEquals("again", page.evaluate("document.activeElement.id"), "the next scan lands in the field");
    }

    @Test
    void aWrongScanAmongManyIsHeardAndSeen() {
        LabelOfKit foreign = kits.aKit(Part.JAW).get(0);
        Page page = listening(signedIn(PHONE, Role.COORDINATOR));
        page.navigate("/kits/" + kits.aBlock(2, Part.JAW).id());
        assertEquals(0, page.evaluate("window.heard"));
        page.locator("#kits").fill(foreign.code());
        page.locator("[name=reason]").fill("came back in the box");
        page.waitForNavigation(() -> page.locator("form:has(#kits) button").press("Enter"));
        assertTrue(page.locator(".fault").isVisible());
        assertTrue((Boolean) page.evaluate("document.body.classList.contains('wrong-scan')"), "it flashes");
        assertEquals(2, page.evaluate("window.heard"), "two low tones");
    }

    /** Counts the tones that the page begins, from its next load on. */
    private static Page listening(Page page) {
        page.addInitScript("window.heard = 0; const start = OscillatorNode.prototype.start;"
                + "OscillatorNode.prototype.start = function (...when) { window.heard++; start.apply(this, when); };");
        return page;
    }

    @Test
    void labelsAreHeldAgainstEachOtherByScannerAlone() {
        List<LabelOfKit> kit = kits.aKit(Part.NODE_LEFT, Part.FORM);
        LabelOfKit other = kits.aKit(Part.FORM).get(0);
        Page page = signedIn(PHONE, Role.SAMPLER);
        page.navigate("/kits/scan-back");
        scan(page, kit.get(0).code());
        scan(page, kit.get(1).code());
        assertTrue(page.locator(".done").textContent().contains("2 scans, one kit"));
        scan(page, other.code());
        assertTrue(page.locator(".fault").textContent().contains("Stop"));
        shoot(page, "scan-back-wrong");
        assertAccessible(page);
    }

    @Test
    void everythingThatIsNotScanningWorksWithoutScript() {
        Page page = page(PHONE);
        page.route("**/*.js", route -> route.abort());
        accounts.put("browser-plain", null, Role.COORDINATOR, List.of("*"), "plain password");
        signIn(page, "browser-plain", "plain password");
        page.locator("#scan").fill(kits.aKit(Part.JAW).get(0).code());
        page.locator("#scan").press("Enter");
        page.waitForURL("**/kits/labels/**");
        assertTrue(page.locator("h1").textContent().contains("Jaw label"));
    }
}
