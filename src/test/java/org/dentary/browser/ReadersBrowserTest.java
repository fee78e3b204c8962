package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.Test;

/** Readers and their agreement in a browser. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ReadersBrowserTest extends Browser {
    @Inject
    IntakeFixture deer;

    @Test
    void anEpidemiologistLooksAtAReaderAndASamplerFindsOnlyThemselves() {
        Deer one = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one));
        UUID second = UUID.randomUUID();
        deer.put("coordinator", "/animals/" + one.kit() + "/jaw-readings/" + second, deer.adult(second))
                .statusCode(201);
        UUID known = UUID.randomUUID();
        deer.put("coordinator", "/animals/" + one.kit() + "/jaw-readings/" + known, deer.knownAge(known, "YEARLING"))
                .statusCode(201);
        look(Role.EPIDEMIOLOGIST, "/readers", "readers");
        look(Role.EPIDEMIOLOGIST, "/readers/T_SAMPLER", "reader");
        Page page = page(DESK);
        signIn(page, "sampler", SeasonFixture.PASSWORD);
        page.navigate("/jaws");
        page.click("a[href='/readers']");
        assertThat(page.locator("tbody tr")).hasCount(1);
        page.click("tbody a");
        assertThat(page.locator("[data-group=KNOWN_AGE], #known_age").first()).isVisible();
        assertThat(page.locator("main")).containsText("Known ages: ");
        page.selectOption("#season", SeasonFixture.SEASON);
        page.click("form.inline button");
        page.waitForURL(url -> url.contains("season=" + SeasonFixture.SEASON));
        assertTrue(page.locator("#drawn").innerText().endsWith(": 0"));
    }
}
