package org.dentary.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.intake.putright.SwapFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.platform.photo.PhotoFixture;
import org.dentary.story.Words;
import org.dentary.story.dossier.DossierFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A mix-up found on the list and opened side by side by scanning; a photo that shows what happened to a tube. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PutRightBrowserTest extends Browser {
    @Inject
    SeasonFixture season;

    @Inject
    DossierFixture tissue;

    @Inject
    SwapFixture swaps;

    @BeforeEach
    void aSeason() {
        season.ensure();
    }

    @Test
    void labelsScannedTogetherLeadFromTheListToBothAnimals() {
        Deer one = tissue.aDeer();
        Deer two = tissue.aDeer();
        tissue.aNode(one);
        tissue.aNode(two);
        Page page = as("sampler", PHONE);
        page.navigate("/kits/scan-back?code=" + one.labels().get(0).code() + "&next="
                + two.labels().get(0).code());
        page.waitForNavigation(() -> page.click("text=Suspected mix-ups"));
        String both = one.kit().compareTo(two.kit()) < 0
                ? "/animals/" + one.kit() + "/put-right?with=" + two.kit()
                : "/animals/" + two.kit() + "/put-right?with=" + one.kit();
        assertTrue(
                page.textContent("main")
                        .contains(Words.asLabel(one.labels().get(0).code())),
                "codes as they are printed");
        shoot(page, "mix-ups-390");
        page.waitForNavigation(() -> page.click("a[href='" + both + "']"));
        assertEquals(
                2,
                page.querySelectorAll("section[aria-labelledby='this'], section[aria-labelledby='that']")
                        .size());
        shoot(page, "side-by-side-390");
        assertNoSidewaysScroll(page);
        look(Role.COORDINATOR, "/animals/mix-ups", "mix-ups");
        look(Role.COORDINATOR, both, "side-by-side");
        look(Role.COORDINATOR, "/kits/labels/" + one.labels().get(0).code(), "label-history");
    }

    @Test
    void theSecondAnimalIsScannedWhereItIsNotKnown() {
        Deer one = tissue.aDeer();
        Deer two = tissue.aDeer();
        tissue.aNode(one);
        tissue.aNode(two);
        Page page = as("sampler", DESK);
        page.navigate("/animals/" + one.kit() + "/put-right");
        page.focus("#beside");
        page.waitForNavigation(() -> scan(page, two.labels().get(0).code()));
        assertTrue(page.textContent("section[aria-labelledby='that']")
                .contains(two.kit().substring(0, 4)));
        assertEquals(two.kit(), page.inputValue("#with"));
        page.navigate("/animals/mix-ups");
        page.fill("#kit", one.labels().get(0).code());
        page.fill("#with", two.labels().get(0).code());
        page.waitForNavigation(() -> page.click("text=Show both side by side"));
        assertTrue(page.url().endsWith("/animals/" + one.kit() + "/put-right?with=" + two.kit()), page.url());
    }

    /** The usual swap: each jar carries the other's label. One of the two deer was taken in under two kits. */
    @Test
    void jarsThatWereExchangedArePutRightTogetherAndBothStoriesTellIt() {
        Deer one = tissue.aDeer();
        Deer two = tissue.aDeer();
        Deer again = tissue.aDeer();
        String ofOne = tissue.aNode(one);
        String ofTwo = tissue.aNode(two);
        tissue.aNode(again);
        swaps.links(again, two).statusCode(201);
        Page asker = as("coordinator", PHONE);
        asker.navigate("/animals/" + one.kit() + "/put-right");
        ask(asker, ofOne, two);
        assertTrue(asker.textContent("#after ~ p").contains("ask for the other label too"));
        ask(asker, ofTwo, one);
        assertEquals(
                2, asker.querySelectorAll("section[aria-labelledby^='asked-']").size());
        asker.navigate("/animals/mix-ups");
        assertTrue(asker.textContent("section[aria-labelledby='waiting']").contains(Words.asLabel(ofTwo)));
        look(Role.COORDINATOR, "/animals/mix-ups", "swaps-waiting");
        Page second = as("epidemiologist", DESK);
        second.navigate("/animals/" + again.kit() + "/put-right");
        String both = second.textContent("main");
        for (Deer each : new Deer[] {one, two, again}) {
            assertTrue(both.contains(Words.asKit(each.kit())), both);
        }
        assertTrue(second.textContent("section[aria-labelledby='this']").contains("a duplicate"), both);
        look(Role.EPIDEMIOLOGIST, "/animals/" + again.kit() + "/put-right", "crossed-swap");
        for (int left = 2; left > 0; left--) {
            second.check("#compared");
            second.waitForNavigation(
                    () -> second.click("section[aria-labelledby='asked-1'] form[action$='/confirmation'] button"));
        }
        for (Deer each : new Deer[] {one, two}) {
            second.navigate("/animals/" + each.kit());
            assertEquals(
                    2,
                    second.querySelectorAll("#happened ~ .timeline li:has-text('Re-attribution confirmed')")
                            .size());
        }
        assertTrue(second.textContent("#tissue ~ .scroll").contains(Words.asLabel(ofOne)));
        for (String code : new String[] {ofOne, ofTwo}) {
            second.navigate("/specimens/" + code + "/custody");
            assertTrue(second.textContent("#what ~ .caution").contains("Confirmed by Test epidemiologist"));
        }
    }

    private static void ask(Page page, String code, Deer to) {
        page.fill("#code", code);
        page.fill("#with", to.labels().get(0).code());
        page.fill("#reason", "jars exchanged on the bench");
        page.fill("#evidence", "photo of the tray");
        page.waitForNavigation(() -> page.click("text=Ask a second person"));
    }

    @Test
    void aPhotoIsChosenOnAPhoneAndShownWithItsEntry() {
        String code = tissue.aNode();
        Page page = as("sampler", PHONE);
        page.navigate("/custody/events?codes=" + code + "&kind=MOVED");
        page.fill("#place", "shelf 4");
        page.setInputFiles("#photo", new FilePayload("cooler.jpg", "image/jpeg", PhotoFixture.jpeg(1200, 900)));
        page.waitForNavigation(() -> page.click("text=Record it"));
        page.navigate("/specimens/" + code + "/custody");
        Object wide = page.evalOnSelector("figure.photo img", "image => image.decode().then(() => image.naturalWidth)");
        assertEquals(400, ((Number) wide).intValue(), "the small copy");
        assertTrue(page.textContent("figure.photo figcaption").matches("(?s).*[0-9a-f]{64}.*"));
        shoot(page, "custody-photo-390");
        look(Role.COORDINATOR, "/specimens/" + code + "/custody", "custody-photo");
        look(Role.COORDINATOR, "/custody/events?codes=" + code + "&kind=TEMPERATURE_READ", "event-photo");
    }

    private Page as(String account, int width) {
        Page page = page(width);
        signIn(page, account, SeasonFixture.PASSWORD);
        return page;
    }
}
