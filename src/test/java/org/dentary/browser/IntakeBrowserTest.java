package org.dentary.browser;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.Test;

/** Intake in a browser: by keyboard and scanner alone, and how its pages look at both widths. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class IntakeBrowserTest extends Browser {
    @Inject
    IntakeFixture deer;

    @Test
    void aSamplerTakesTwoDeerInByKeyboardAndScannerAlone() {
        Deer first = deer.aDeer();
        Deer second = deer.aDeer();
        Page page = page(PHONE);
        signIn(page, "sampler", SeasonFixture.PASSWORD);
        page.navigate("/intake");
        scan(page, first.label(Part.STUB));
        press(page, "[name=sex][value=MALE]");
        page.locator("#diedOn").fill(IntakeFixture.DIED_ON);
        press(page, "[name=jawStatus][value=READ]");
        press(page, "[name='jaw.rowSeen'][value=WHOLE]");
        press(page, "[name='jaw.cheekTeeth'][value='6']");
        press(page, "[name='jaw.thirdTooth.cusps'][value='3']");
        press(page, "[name='jaw.sixthTooth.dentine'][value=NOT_EXPOSED]");
        page.locator("#specimens").focus();
        page.keyboard().type(first.label(Part.NODE_LEFT));
        page.keyboard().press("Enter");
        page.keyboard().type(first.label(Part.NODE_RIGHT));
        page.keyboard().press("Enter");
        page.waitForNavigation(() -> page.locator("button.main").press("Enter"));
        assertTrue(
                page.url().contains("done=" + first.kit()),
                page.url() + page.locator("main").innerText());
        shoot(page, "intake-next");
        as("auditor")
                .get("/api/v1/animals/" + first.kit())
                .then()
                .body("ageClass", equalTo("YEARLING"))
                .body("specimens", hasSize(2));
        scan(page, second.label(Part.JAW));
        assertTrue(page.locator("#diedOn").inputValue().equals(IntakeFixture.DIED_ON));
        press(page, "[name=sex][value=FEMALE]");
        press(page, "[name=jawStatus][value=COLLECTED_TO_READ]");
        page.waitForNavigation(() -> page.locator("button.main").press("Enter"));
        as("auditor")
                .get("/api/v1/animals/" + second.kit())
                .then()
                .body("jawStatus", equalTo("COLLECTED_TO_READ"))
                .body("specimens", hasSize(0));
    }

    @Test
    void thePagesOfIntakeLookRightAtBothWidths() {
        Deer one = deer.aDeer();
        look(Role.SAMPLER, "/intake", "intake");
        look(Role.SAMPLER, "/intake/" + one.kit(), "intake-deer");
        look(Role.SAMPLER, "/day", "day");
        deer.take(one, deer.yearlingWithLeftNode(one));
        look(Role.SAMPLER, "/animals/" + one.kit() + "/specimens", "intake-tissue");
    }

    @Test
    void theStoryAndItsQueuesLookRightAtBothWidths() {
        Deer one = deer.aDeer();
        Deer two = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one));
        deer.take(two, deer.facts());
        UUID second = UUID.randomUUID();
        deer.put("coordinator", "/animals/" + one.kit() + "/jaw-readings/" + second, deer.adult(second))
                .statusCode(201);
        look(Role.LIAISON, "/animals/" + one.kit(), "animal");
        look(Role.AUDITOR, "/animals?q=" + one.kit(), "animals");
        look(Role.EPIDEMIOLOGIST, "/jaws", "jaws");
        look(Role.EPIDEMIOLOGIST, "/animals/" + one.kit() + "/age", "age");
        look(Role.EPIDEMIOLOGIST, "/animals/" + one.kit() + "/put-right?with=" + two.kit(), "put-right");
    }

    private static void press(Page page, String radio) {
        page.locator(radio).press("Space");
    }
}
