package org.dentary.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.custody.Http;
import org.dentary.custody.identity.IdentityFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.platform.photo.PhotoFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A jar under a wrong id: the liaison vouches for it from the discrepancy, the coordinator looks and grants. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class IdentityBrowserTest extends Browser {
    @Inject
    SeasonFixture season;

    @Inject
    IdentityFixture people;

    @BeforeEach
    void aSeason() {
        season.ensure();
    }

    @Test
    void twoPeopleStandForAMislabeledSpecimenAndItsPagesSayItFirst() {
        Deer deer = people.received(SeasonFixture.UNIT);
        String code = deer.label(Part.NODE_LEFT);
        wrongId(code);
        Page liaison = as("liaison", PHONE);
        liaison.navigate("/custody/discrepancies");
        liaison.waitForNavigation(
                () -> liaison.click("a[href*='/identity-exceptions/new?code=" + code + "&discrepancy=']"));
        assertEquals(code, liaison.inputValue("#code"));
        liaison.selectOption("#problem", "WRONG_ID");
        liaison.fill("#irreplaceable", "the hunter has left with the carcass");
        liaison.fill("#evidence", "the only jar of its box that is not on the list");
        liaison.setInputFiles("#photo", new FilePayload("jar.jpg", "image/jpeg", PhotoFixture.jpeg(1200, 900)));
        liaison.fill("#password", "not my password");
        liaison.waitForNavigation(() -> liaison.click("button.main"));
        assertTrue(liaison.textContent("[role=alert]").contains("not the password of account liaison"));
        assertEquals("the only jar of its box that is not on the list", liaison.inputValue("#evidence"));
        assertEquals("WRONG_ID", liaison.inputValue("#problem"));
        assertEquals("", liaison.inputValue("#password"), "a password is never shown again");
        assertTrue(liaison.textContent("main").contains("Photo 1 is kept"));
        shoot(liaison, "identity-refused-390");
        assertAccessible(liaison);
        assertNoSidewaysScroll(liaison);
        // By keyboard alone from here: type, Enter.
        liaison.focus("#password");
        liaison.keyboard().type(SeasonFixture.PASSWORD);
        liaison.waitForNavigation(() -> liaison.keyboard().press("Enter"));
        String address = liaison.url().replaceAll(".*(/identity-exceptions/)", "$1");
        assertTrue(liaison.textContent("main").contains("Waits for a second person"));
        assertEquals(0, liaison.querySelectorAll("form[action$='/decision']").size(), "who asked decides nothing");

        Page coordinator = as("coordinator", DESK);
        assertTrue(coordinator.textContent("main").contains("to decide"), "counted at home");
        coordinator.navigate("/identity-exceptions");
        coordinator.waitForNavigation(() -> coordinator.click("a[href='" + address + "']"));
        Object wide = coordinator.evalOnSelector(
                "figure.photo img", "image => image.decode().then(() => image.naturalWidth)");
        assertEquals(400, ((Number) wide).intValue(), "the second person sees the photo");
        shoot(coordinator, "identity-decide-1280");
        coordinator.fill("#reason", "compared the photo with the list and the stub");
        coordinator.fill("#password", SeasonFixture.PASSWORD);
        coordinator.waitForNavigation(() -> coordinator.click("form[action$='/decision'] button"));
        assertTrue(coordinator.textContent("[role=alert]").contains("say true to grant it"));
        assertEquals("compared the photo with the list and the stub", coordinator.inputValue("#reason"));
        coordinator.check("input[name=granted][value=true]");
        coordinator.fill("#password", SeasonFixture.PASSWORD);
        coordinator.waitForNavigation(() -> coordinator.click("form[action$='/decision'] button"));
        assertTrue(coordinator.textContent("h1 + .lede").startsWith("Granted"));

        coordinator.navigate("/specimens/" + code + "/custody");
        String custody = coordinator.textContent("main");
        assertTrue(custody.contains("Accepted by a signed identity exception"), custody);
        assertTrue(
                custody.indexOf("Accepted by a signed identity exception") < custody.indexOf("Now with"),
                "it is said first");
        coordinator.navigate("/animals/" + deer.kit());
        assertTrue(coordinator.textContent("main").contains("was accepted by a signed identity exception"));
        shoot(coordinator, "identity-animal-1280");
        look(Role.COORDINATOR, "/specimens/" + code + "/custody", "identity-custody");
        look(Role.COORDINATOR, "/identity-exceptions?all=true", "identity-list");
        look(Role.COORDINATOR, address, "identity-granted");
        look(Role.LIAISON, "/identity-exceptions/new?code=" + code, "identity-ask");
        UUID waits = people.asked(people.received(SeasonFixture.UNIT).label(Part.NODE_LEFT));
        look(Role.COORDINATOR, "/identity-exceptions/" + waits, "identity-waits");
    }

    private static void wrongId(String code) {
        Http.json("liaison")
                .body("{\"code\":\"" + code
                        + "\",\"kind\":\"WRONG_ID\",\"owner\":\"T_LIAISON\",\"dueOn\":\"2020-01-01\"}")
                .put("/api/v1/discrepancies/" + UUID.randomUUID())
                .then()
                .statusCode(201);
    }

    private Page as(String account, int width) {
        Page page = page(width);
        signIn(page, account, SeasonFixture.PASSWORD);
        return page;
    }
}
