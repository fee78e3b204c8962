package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SetUpBrowserTest extends Browser {
    @Inject
    SeasonFixture season;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void theSeasonsPageIsReadableAndReachable() {
        look(Role.COORDINATOR, "/season", "season");
    }

    @Test
    void theSettingsAreReadableAndReachable() {
        look(Role.COORDINATOR, "/season/settings?setting=PROTOCOL_TEXT", "season-settings");
    }

    @Test
    void aListsPageIsReadableAndReachable() {
        look(Role.COORDINATOR, "/season/lists/laboratory-acceptance", "season-list");
    }

    @Test
    void theReviewIsReadableAndReachable() {
        look(Role.COORDINATOR, "/season/review", "season-review");
    }

    @Test
    void theProtocolIsReadableAndReachable() {
        look(Role.SAMPLER, "/protocol", "protocol");
    }

    @Test
    void firstStepsAreReadableAndReachableByAnybody() {
        look(null, "/first-steps", "first-steps");
    }

    @Test
    void firstStepsOpenWithoutASignal() {
        Page page = page(PHONE);
        page.navigate("/sign-in");
        until(page, """
                async () => await caches.match("/first-steps")
                    && (await navigator.serviceWorker.getRegistration("/first-steps"))?.active?.state === "activated"
                """);
        // The worker serves the page from its second opening on; the first may still have gone past it.
        page.navigate("/first-steps");
        until(page, "async () => (await navigator.serviceWorker.ready) && navigator.serviceWorker.controller !== null");
        page.context().setOffline(true);
        page.navigate("/first-steps");
        assertThat(page.getByText("Splash in eye")).isVisible();
        assertThat(page.locator("link[rel=stylesheet]")).hasCount(1);
        page.context().setOffline(false);
    }

    @Test
    void aFileIsSentMendedAndPosted() {
        String code = "B_" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(java.util.Locale.ROOT);
        Page page = signedIn(PHONE, Role.COORDINATOR);
        page.navigate("/season/lists/parties");
        send(page, "code,name\n" + code + ",\n");
        assertThat(page.getByText("'name' is empty")).isVisible();
        shoot(page, "season-preview-problems");
        assertAccessible(page);
        assertNoSidewaysScroll(page);
        page.getByText("Another file for Parties").click();
        send(page, "code,name\n" + code + ",Browser's couriers\n");
        shoot(page, "season-preview");
        page.getByText("Post 1 line").click();
        assertThat(page.getByText("1 added, 0 changed")).isVisible();
        assertAccessible(page);
    }

    private static void send(Page page, String file) {
        page.setInputFiles("#file", new FilePayload("parties.csv", "text/csv", file.getBytes(StandardCharsets.UTF_8)));
        page.getByText("Look it through").click();
        page.waitForURL("**/season/files/**");
    }
}
