package org.dentary.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.platform.photo.PhotoFixture;
import org.dentary.story.dossier.DossierFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Hand-overs in the browser: two people with a scanner each, an outsider who signs, a swap put right by two. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class HandOverBrowserTest extends Browser {
    @Inject
    SeasonFixture season;

    @Inject
    DossierFixture tissue;

    @BeforeEach
    void aSeason() {
        season.ensure();
    }

    @Test
    void twoPeopleHandOverByScannerAndWhatIsMissingIsADiscrepancy() {
        String first = tissue.aNode();
        String second = tissue.aNode();
        Page giver = as("sampler", PHONE);
        giver.navigate("/custody");
        giver.focus("#codes");
        scanLine(giver, "]C0" + first);
        scanLine(giver, second);
        giver.fill("#to", "liaison");
        giver.waitForNavigation(() -> giver.click("text=Offer it now"));
        assertTrue(giver.textContent("[role=status]").contains("2 codes offered to Test liaison"));
        Page receiver = as("liaison", PHONE);
        receiver.navigate("/custody");
        String offer = giver.url().replaceAll(".*done=", "");
        receiver.focus("#codes-" + offer);
        scanLine(receiver, first);
        receiver.click("text=Add a photo");
        receiver.setInputFiles(
                "#photo-" + offer, new FilePayload("cooler.jpg", "image/jpeg", PhotoFixture.jpeg(640, 480)));
        assertAccessible(receiver);
        shoot(receiver, "hand-over-counted-390");
        receiver.waitForNavigation(
                () -> receiver.click("form[action='/custody/hand-overs/" + offer + "/acceptance'] button"));
        String done = receiver.textContent("[role=status]");
        assertTrue(done.contains("1 of 2 codes are with Test liaison now; 1 not counted"), done);
        assertTrue(receiver.textContent("#held ~ .scroll").contains(grouped(first)));
        giver.navigate("/custody/discrepancies");
        assertTrue(giver.textContent("main").contains(grouped(second)), "the giver sees what is missing");
        String photo = giver.getAttribute("figure.photo img", "src");
        assertEquals(200, giver.request().get(photo).status(), "with the photo of the count");
        shoot(giver, "discrepancies-390");
        look(Role.COORDINATOR, "/custody", "custody");
        look(Role.COORDINATOR, "/custody/discrepancies", "discrepancies");
        look(Role.AUDITOR, "/ledger", "ledger");
        look(Role.COORDINATOR, "/custody/events?codes=" + first, "custody-event");
    }

    @Test
    void anOutsiderSignsOnTheScreen() {
        String code = tissue.aNode();
        Page page = as("sampler", PHONE);
        page.navigate("/custody?codes=" + code);
        page.fill("#to", SeasonFixture.PARTY);
        page.click("text=They sign here");
        page.fill("#signedBy", "R. Okonedo");
        page.locator("canvas.sign").scrollIntoViewIfNeeded();
        BoundingBox field = page.locator("canvas.sign").boundingBox();
        page.mouse().move(field.x + 20, field.y + 40);
        page.mouse().down();
        page.mouse().move(field.x + 60, field.y + 20);
        page.mouse().move(field.x + 90, field.y + 60);
        page.mouse().up();
        shoot(page, "signature-390");
        assertAccessible(page);
        assertTargetsFitGloves(page);
        page.waitForNavigation(() -> page.click("text=Offer it now"));
        assertTrue(page.textContent("[role=status]").contains("1 code is with Test courier now"));
        page.navigate("/specimens/" + code + "/custody");
        String ink = page.getAttribute("svg.signature path", "d");
        assertTrue(ink.matches("M\\d+ \\d+(L\\d+ \\d+){2,}"), ink);
        Page desk = as("coordinator", PHONE);
        desk.navigate("/specimens/" + code + "/custody");
        Locator entry = desk.locator("li:has(svg.signature)");
        entry.locator("details summary").last().click();
        entry.locator("select").selectOption("signature");
        entry.locator("input[name=reason]").fill("they asked us to");
        assertAccessible(desk);
        assertNoSidewaysScroll(desk);
        shoot(desk, "signature-to-erase-390");
        desk.waitForNavigation(
                () -> entry.locator("button:has-text('Erase it for good')").click());
        assertEquals(0, desk.querySelectorAll("svg.signature").size());
        String told = desk.textContent("#events ~ .timeline");
        assertTrue(told.contains("The signature was erased on") && told.contains("they asked us to"), told);
    }

    @Test
    void aSwapIsPutRightByTwoAndBothStoriesTellIt() {
        var from = tissue.aDeer();
        var to = tissue.aDeer();
        String code = tissue.aNode(from);
        tissue.aNode(to);
        Page asker = as("coordinator", DESK);
        asker.navigate("/animals/" + from.kit() + "/put-right");
        asker.fill("#code", code);
        asker.fill("#with", to.labels().get(0).code());
        asker.fill("#reason", "jars exchanged on the bench");
        asker.fill("#evidence", "photo of the tray");
        asker.waitForNavigation(() -> asker.click("text=Ask a second person"));
        for (String kit : new String[] {from.kit(), to.kit()}) {
            asker.navigate("/animals/" + kit);
            assertTrue(asker.textContent("main").contains("A swapped label is unresolved"), kit);
        }
        Page second = as("epidemiologist", DESK);
        second.navigate("/animals/" + to.kit() + "/put-right");
        String shown = second.textContent("main");
        assertTrue(shown.contains("This animal") && shown.contains("The other animal"), shown);
        assertTrue(shown.contains("photo of the tray") && shown.contains("What will change"), shown);
        shoot(second, "swap-to-confirm-1280");
        assertAccessible(second);
        second.check("#compared");
        second.waitForNavigation(() -> second.click("form[action$='/confirmation'] button"));
        for (String kit : new String[] {from.kit(), to.kit()}) {
            second.navigate("/animals/" + kit);
            String story = second.textContent("#happened ~ .timeline");
            assertTrue(story.contains("Re-attribution confirmed") && !story.contains("NOT_TESTED"), story);
            shoot(second, "swap-story-" + (kit.equals(from.kit()) ? "from" : "to"));
        }
        assertTrue(second.textContent("#tissue ~ .scroll").contains(grouped(code)), "the tissue is the other's now");
        second.navigate("/specimens/" + code + "/custody");
        String chain = second.textContent("#what ~ .caution");
        assertTrue(chain.contains("Confirmed by Test epidemiologist"), chain);
        assertEquals(0, second.querySelectorAll("main .fault").size(), "a swap that is put right is no concern");
    }

    private Page as(String account, int width) {
        Page page = page(width);
        signIn(page, account, SeasonFixture.PASSWORD);
        return page;
    }

    /** A scanner on a field of several lines: each code ends with Enter. */
    private static void scanLine(Page page, String text) {
        page.keyboard().type(text);
        page.keyboard().press("Enter");
    }

    private static String grouped(String code) {
        return code.substring(0, 4) + "-" + code.substring(4, 8) + "-" + code.substring(8);
    }
}
