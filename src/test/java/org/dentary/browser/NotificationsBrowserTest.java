package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.custody.identity.IdentityFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.result.notification.NotificationFixture;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Telling people on the pages, and the stub page as a hunter sees it. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class NotificationsBrowserTest extends Browser {
    @Inject
    NotificationFixture telling;

    @Inject
    IdentityFixture identity;

    @Inject
    EntityManager entities;

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void aDetectionIsCalledAboutAndACallerIsFound(int width) {
        telling.ensure();
        Deer deer = telling.broughtBy("Astrid Fjell", "555 0142");
        Deer other = telling.broughtBy("Astrid Fjell", "555 0142");
        telling.outcome(deer, "DETECTED", "DETECTED");
        telling.outcome(other, "NOT_DETECTED", "NOT_DETECTED");
        Page page = signedIn(width, Role.NOTIFIER);
        page.navigate("/notifications");
        check(page, "telling-" + width, width);
        page.navigate("/notifications/" + deer.kit() + "/CWD");
        page.fill("#purpose", "to call about the result");
        page.click("text=Show the contact");
        assertThat(page.locator("#main")).containsText("555 0142");
        check(page, "telling-one-" + width, width);
        page.selectOption("#channel", "PHONE");
        page.selectOption("#result", "SENT");
        page.click("button:text-is('Record')");
        assertThat(page.locator(".fault")).containsText("cannot come of");
        page.selectOption("#result", "REACHED");
        page.click("button:text-is('Record')");
        assertThat(page.locator("dl.facts").first()).containsText("Told");
        page.navigate("/notifications/callers");
        page.selectOption("#by", "NAME");
        page.fill("#value", "fjell astrid");
        page.fill("#purpose", "caller asks for the result");
        page.click("main button.main");
        assertThat(page.locator("#m-" + other.kit())).hasCount(1);
        check(page, "telling-caller-" + width, width);
        page.navigate("/notifications/wordings");
        check(page, "telling-wordings-" + width, width);
        Page writer = signedIn(width, Role.COORDINATOR);
        writer.navigate("/notifications/wordings");
        writer.fill("#wording", "The meat is safe.");
        writer.click("text=Keep this edition");
        assertThat(writer.locator(".fault")).containsText("promises what a test cannot");
        check(writer, "telling-wordings-refused-" + width, width);
    }

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void aStubIsLookedUpWithoutAnAccount(int width) {
        telling.ensure();
        QuarkusTransaction.requiringNew()
                .run(() ->
                        entities.createNativeQuery("delete from stub_look_up").executeUpdate());
        Deer deer = telling.broughtBy("Nils Hovden", "555 0143");
        telling.outcome(deer, "NOT_DETECTED", "NOT_DETECTED");
        Page page = page(width);
        page.navigate("/stub");
        check(page, "stub-empty-" + width, width);
        page.fill("#code", deer.label(Part.STUB).toLowerCase(java.util.Locale.ROOT));
        page.fill("#diedOn", "2025-11-13");
        page.click("text=Look it up");
        assertThat(page.locator(".fault")).containsText("We have nothing");
        check(page, "stub-nothing-" + width, width);
        page.fill("#diedOn", IntakeFixture.DIED_ON);
        page.click("text=Look it up");
        assertThat(page.locator("#main")).containsText("was not detected in the tissue");
        check(page, "stub-told-" + width, width);
    }

    /** All its tissue was refused: the desk and the hunter read that there is no result, and why. */
    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void anAnimalWhoseTissueWasRefusedIsToldInItsOwnWords(int width) {
        telling.ensure();
        QuarkusTransaction.requiringNew()
                .run(() ->
                        entities.createNativeQuery("delete from stub_look_up").executeUpdate());
        Deer deer = identity.received(
                SeasonFixture.UNIT,
                body -> body.putObject("contact").put("name", "Sigrun Dahl").put("phone", "555 0144"));
        identity.refused(identity.asked(deer.label(Part.NODE_LEFT)));
        Page page = signedIn(width, Role.NOTIFIER);
        page.navigate("/notifications/" + deer.kit() + "/CWD");
        assertThat(page.locator("#main")).containsText("could not be shown that the tissue came from this animal");
        assertThat(page.locator("dl.facts").first()).containsText("Settled");
        check(page, "telling-refused-" + width, width);
        page.selectOption("#channel", "PHONE");
        page.selectOption("#result", "REACHED");
        page.click("button:text-is('Record')");
        assertThat(page.locator("dl.facts").first()).containsText("Told");
        Page hunter = page(width);
        hunter.navigate("/stub");
        hunter.fill("#code", deer.label(Part.STUB));
        hunter.fill("#diedOn", IntakeFixture.DIED_ON);
        hunter.click("text=Look it up");
        assertThat(hunter.locator("#main")).containsText("could not be shown that the tissue came from your deer");
        check(hunter, "stub-refused-" + width, width);
    }

    private static void check(Page page, String name, int width) {
        shoot(page, name);
        assertAccessible(page);
        assertNoSidewaysScroll(page);
        if (width == PHONE) {
            assertTargetsFitGloves(page);
        }
    }
}
