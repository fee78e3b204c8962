package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.UUID;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.result.imports.LargeFile;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A large file on its way: the page says how far it is and ends at what was posted, without anybody touching it. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ImportProgressBrowserTest extends Browser {
    @Inject
    LargeFile large;

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void thePageShowsHowFarAPostingIsAndThenWhatWasPosted(int width) {
        UUID id = large.previewed();
        Page page = signedIn(width, Role.LIAISON);
        page.navigate("/results/imports/" + id);
        page.check("[name=leaveOutFaulty]");
        try (LargeFile.Held held = large.hold(id)) {
            page.click("text=Post the findings");
            assertThat(page.locator("h2")).containsText("Being posted");
            assertThat(page.locator("progress")).isVisible();
            shoot(page, "results-progress-" + width);
            assertAccessible(page);
            assertNoSidewaysScroll(page);
            if (width == PHONE) {
                assertTargetsFitGloves(page);
            }
        }
        assertThat(page.locator(".done")).containsText("Posted: 1 line.");
    }
}
