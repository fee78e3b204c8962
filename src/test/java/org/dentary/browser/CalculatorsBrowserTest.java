package org.dentary.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CalculatorsBrowserTest extends Browser {

    @Test
    void theRoofAndAnAnswerAreReadableAtBothSizesInLightAndDark() {
        look(Role.NOTIFIER, "/calculators", "calculators");
        look(
                Role.NOTIFIER,
                "/calculators/proportion?detected=0&tested=148&interval=WILSON&confidence=0.95",
                "calculator-proportion");
    }

    @Test
    void eachCalculatorOpensFromTheRoofAndAnswersItsExample() {
        Page page = signedIn(PHONE, Role.EPIDEMIOLOGIST);
        page.navigate("/calculators");
        Locator links = page.locator(".tiles a");
        List<String> paths =
                links.evaluateAll("links => links.map(link => link.getAttribute('href'))") instanceof List<?> all
                        ? all.stream().map(String::valueOf).toList()
                        : List.of();
        assertEquals(12, paths.size());
        for (String path : paths) {
            page.navigate("/calculators");
            page.locator(".tiles a[href='" + path + "']").click();
            page.getByText("Show an example").click();
            page.locator("#answer").waitFor();
            Locator drawing = page.locator("figure.chart img");
            assertTrue(
                    ((Number) drawing.evaluate("image => image.decode().then(() => image.naturalWidth)")).intValue()
                            > 0,
                    path + " draws nothing");
            assertTrue(page.locator("figure.chart tbody tr").count() > 0, path + " has no table under its drawing");
            shoot(page, "calculator" + path.replace('/', '-'));
            assertAccessible(page);
            assertNoSidewaysScroll(page);
            assertTargetsFitGloves(page);
        }
    }

    @Test
    void anAnswerIsAskedByKeyboardAndSentOnByItsAddress() {
        Page page = signedIn(DESK, Role.SAMPLER);
        page.navigate("/calculators/sample-size");
        page.locator("#population").fill("100");
        page.locator("#infected").fill("5");
        page.locator("#sensitivity").fill("1");
        page.keyboard().press("Enter");
        page.locator("#answer").waitFor();
        // R 4.2.2: 1 - dhyper(0, 5, 95, 45) = .9538
        assertEquals(
                "Test 45 of 100: 95.4 % chance to detect 5 infected.",
                page.locator("#answer-is").textContent());
        String address = page.url();
        Page colleague = signedIn(DESK, Role.AUDITOR);
        colleague.navigate(address);
        assertEquals(
                "Test 45 of 100: 95.4 % chance to detect 5 infected.",
                colleague.locator("#answer-is").textContent());
        String text = colleague.locator("#as-text").inputValue();
        assertTrue(text.contains("Method: ") && text.contains("/calculators/sample-size?population=100"), text);
    }
}
