package org.dentary.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Media;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class JawKeyBrowserTest extends Browser {
    private static final String ADULT =
            "/jaw-key?rowSeen=WHOLE&cheekTeeth=6&thirdTooth.cusps=2&thirdTooth.eruption=FULL"
                    + "&thirdTooth.dentine=DEFINED&sixthTooth.dentine=DEFINED&sixthTooth.eruption=FULL";

    private record Jaw(String keys, String keyClass, String certainty) {}

    @Test
    void agesSixJawsByKeyboardOnly() {
        List<Jaw> jaws = List.of(
                new Jaw("121", "FAWN", "CLEAR"),
                new Jaw("1111", "YEARLING_MILK_THIRD", "CLEAR"),
                new Jaw("112111", "YEARLING_NEW_THIRD", "CLEAR"),
                new Jaw("1122332", "ADULT", "CLEAR"),
                new Jaw("112232", "ADULT", "PROBABLE"),
                new Jaw("2", "NONE", "UNRESOLVED"));
        Page page = signedIn(DESK, Role.SAMPLER);
        page.navigate("/jaw-key");
        for (Jaw jaw : jaws) {
            for (char key : jaw.keys().toCharArray()) {
                int before = page.locator(".asked > section").count();
                page.keyboard().press(String.valueOf(key));
                until(page, "document.querySelectorAll('.asked > section').length === " + (before + 1));
            }
            Locator answer = page.locator(".answer");
            assertEquals(jaw.keyClass(), answer.getAttribute("data-key-class"), jaw.keys());
            assertEquals(jaw.certainty(), answer.getAttribute("data-certainty"), jaw.keys());
            until(page, "document.activeElement.hasAttribute('data-again')");
            page.keyboard().press("Enter");
            until(page, "!document.querySelector('.answer') && !document.querySelector('.asked')");
        }
    }

    @Test
    void enterTakesTheFirstAnswerAndBackspaceGoesBack() {
        Page page = signedIn(DESK, Role.SAMPLER);
        page.navigate("/jaw-key");
        until(page, "document.activeElement.hasAttribute('data-first')");
        page.keyboard().press("Enter");
        page.waitForURL(url -> url.endsWith("?rowSeen=WHOLE"));
        until(page, "document.activeElement.hasAttribute('data-first')");
        page.keyboard().press("Backspace");
        page.waitForURL(url -> url.endsWith("/jaw-key"));
    }

    @Test
    void agesAJawOnAPhoneByTouchOneQuestionAScreen() {
        Page page = signedIn(PHONE, Role.SAMPLER);
        page.navigate("/jaw-key");
        for (String answer : List.of("Yes, to the back", "Six", "Two cusps", "Fully up", "A defined line", "A trace")) {
            assertEquals(1, page.locator("section.now h2").count());
            assertTrue(page.locator(".asked > section:visible").count() == 0);
            Locator pick = page.locator(".picks .pick:visible").filter(new Locator.FilterOptions().setHasText(answer));
            assertTrue(pick.boundingBox().height >= 64, answer);
            Locator last = page.locator(".now .pick").last();
            assertTrue(last.boundingBox().y + last.boundingBox().height < 900, "one screen holds " + answer);
            pick.click();
        }
        assertEquals("ADULT", page.locator(".answer").getAttribute("data-key-class"));
        assertEquals("PROBABLE", page.locator(".answer").getAttribute("data-certainty"));
        assertTrue(page.locator(".answer").textContent().contains("A second reader looks at this jaw"));
        // The strip says what was said, and a touch on it asks again.
        page.locator(".said .button")
                .filter(new Locator.FilterOptions().setHasText("Two cusps"))
                .click();
        assertTrue(page.locator("section.now h2").textContent().contains("cusps"));
        page.locator(".pick:visible")
                .filter(new Locator.FilterOptions().setHasText("Unsure"))
                .click();
        assertEquals("UNRESOLVED", page.locator(".answer").getAttribute("data-certainty"));
    }

    @Test
    void showsTheBandOfAgesForADayOfDeath() {
        Page page = signedIn(DESK, Role.SAMPLER);
        page.navigate(ADULT + "&diedOn=2025-11-15");
        assertTrue(page.locator(".answer dl").textContent().contains("At least 27.0 months"));
        assertEquals("2025-11-15", page.inputValue("#diedOn"));
    }

    @Test
    void isReadableAtBothSizesInLightAndDarkAndInPrint() {
        look(Role.SAMPLER, "/jaw-key", "jaw-key-start");
        look(
                Role.SAMPLER,
                "/jaw-key?rowSeen=WHOLE&cheekTeeth=6&thirdTooth.cusps=2&thirdTooth.eruption=FULL",
                "jaw-key-dentine");
        look(Role.SAMPLER, ADULT, "jaw-key-adult");
        look(Role.SAMPLER, "/jaw-key?rowSeen=WHOLE&cheekTeeth=5&thirdTooth.cusps=2", "jaw-key-disputed");
        Page page = signedIn(DESK, Role.SAMPLER);
        page.navigate(ADULT);
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
        shoot(page, "jaw-key-print");
    }
}
