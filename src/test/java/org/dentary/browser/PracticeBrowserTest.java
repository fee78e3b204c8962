package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.Test;

/** Practice in a browser: by keyboard alone, by touch on a phone, and how its pages look. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PracticeBrowserTest extends Browser {
    @Inject
    SeasonFixture season;

    @Test
    void aRoundIsDoneByKeyboardAlone() {
        season.ensure();
        Page page = page(DESK);
        signIn(page, "coordinator-two", SeasonFixture.PASSWORD);
        page.navigate("/practice");
        page.locator("[data-first]").focus();
        page.keyboard().press("Enter");
        for (int jaw = 1; jaw <= 10; jaw++) {
            page.waitForSelector("h1:has-text('Jaw " + jaw + " of 10')");
            until(page, "document.activeElement.hasAttribute('data-first')");
            assertEquals(0, page.locator("ol li").count());
            page.keyboard().press(jaw % 2 == 0 ? "Enter" : "3");
        }
        page.waitForSelector("h1:has-text('of 10 right')");
        assertThat(page.locator("section[data-right]")).hasCount(10);
        assertEquals(
                page.locator("section[data-right=true]").count() + " of 10 right",
                page.locator("h1").innerText());
        shoot(page, "practice-result-1280");
        assertAccessible(page);
    }

    @Test
    void aRoundIsDoneByTouchOnAPhone() {
        season.ensure();
        Page page = page(PHONE);
        signIn(page, "sampler-two", SeasonFixture.PASSWORD);
        page.navigate("/practice");
        page.click("button.main");
        for (int jaw = 1; jaw <= 10; jaw++) {
            page.waitForSelector("h1:has-text('Jaw " + jaw + " of 10')");
            Locator last = page.locator("button.pick").last();
            assertTrue(last.boundingBox().height >= 48);
            assertNoSidewaysScroll(page);
            if (jaw == 2) {
                assertAccessible(page);
                assertTargetsFitGloves(page);
                shoot(page, "practice-jaw-390");
            }
            page.locator("button.pick:has-text('Yearling')").click();
        }
        page.waitForSelector("h1:has-text('of 10 right')");
        assertAccessible(page);
        assertNoSidewaysScroll(page);
        shoot(page, "practice-result-390");
    }

    @Test
    void theOtherPagesOfPracticeLookRightAtBothWidths() {
        season.ensure();
        look(Role.SAMPLER, "/practice", "practice");
        look(Role.COORDINATOR, "/practice/panel", "practice-panel");
    }
}
