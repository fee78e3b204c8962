package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A laboratory's HL7 codes, typed and kept, at a phone's width and at a desk. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CodeMapsBrowserTest extends Browser {
    @Inject
    SeasonFixture season;

    /** The map is for messages far ahead, so that it reads none of another test. */
    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void aMapIsTypedItsFaultIsSaidAndItIsKept(int width) {
        season.ensure();
        Page page = signedIn(width, Role.LIAISON);
        page.navigate("/code-maps");
        page.selectOption("#laboratory", "T_LAB");
        page.fill("#inForceFrom", "2099-09-01");
        page.fill("#codes", "OBX-5: 260415000^SCT = ABSENT");
        page.click("text=Keep this edition");
        assertThat(page.locator("main")).containsText("'ABSENT' is no word for OBX-5");
        look(page, "code-maps-fault-" + width, width);
        page.fill("#codes", "OBX-5: 260415000^SCT = NOT_DETECTED\nOBX-17: EIA = T_SCREEN");
        page.click("text=Keep this edition");
        assertThat(page.locator("table").first()).containsText("Sep 1, 2099");
        look(page, "code-maps-" + width, width);
        String edition = page.locator("table tbody tr", new Page.LocatorOptions().setHasText("Sep 1, 2099"))
                .first()
                .locator("td.num a")
                .getAttribute("href");
        page.navigate(edition);
        assertThat(page.locator("main")).containsText("260415000");
        assertThat(page.locator("main")).containsText("Not detected");
        look(page, "code-map-" + width, width);
    }
}
