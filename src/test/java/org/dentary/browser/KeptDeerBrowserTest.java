package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.dentary.SeasonFixture;
import org.dentary.codes.CheckSystem;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.Test;

/** A day without a signal: deer are kept on the device, outlive its being switched off, and are sent when it is back. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class KeptDeerBrowserTest extends Browser {
    private static final String FORM = "/intake/without-signal";

    @Inject
    IntakeFixture deer;

    @Test
    void deerAreKeptWithoutASignalByKeyboardAndScannerAndSentWhenItIsBack() {
        Deer first = deer.aDeer();
        Deer second = deer.aDeer();
        Page page = signedInAndReady();
        page.context().setOffline(true);
        page.navigate("/intake");
        assertTrue(page.url().endsWith(FORM), page.url());
        keep(page, first, "MALE");
        assertThat(page.locator("#waiting-count")).hasText("1 deer waits on this device");
        assertThat(page.locator("#sending")).containsText("No signal");
        assertThat(page.locator("#kit")).isFocused();
        keep(page, second, "FEMALE");
        assertThat(page.locator("#waiting-count")).hasText("2 deer wait on this device");
        assertThat(page.locator("body")).not().hasClass("wrong-scan");
        look(page, "kept-deer-waiting", PHONE);
        page.reload();
        assertThat(page.locator("#kept tbody tr")).hasCount(2);
        as("auditor").get("/api/v1/animals/" + first.kit()).then().statusCode(404);

        page.context().setOffline(false);
        assertThat(page.locator("#sent li")).hasCount(2);
        assertThat(page.locator("#sent li").first()).containsText("Yearling, 2 specimens.");
        assertThat(page.locator("#waiting-count")).hasText("Nothing waits on this device");
        shoot(page, "kept-deer-sent");
        as("auditor")
                .get("/api/v1/animals/" + second.kit())
                .then()
                .body("sex", equalTo("FEMALE"))
                .body("ageClass", equalTo("YEARLING"))
                .body("specimens", hasSize(2));
        page.navigate("/intake");
        assertThat(page.getByText("on this device and")).hasCount(0);
    }

    @Test
    void aDeerThatIsRefusedStaysWithItsReasonIsMendedAndSent() {
        Deer one = deer.aDeer();
        Page page = signedInAndReady();
        page.context().setOffline(true);
        page.navigate(FORM);
        keep(page, one, "MALE");
        page.context().setOffline(false);
        assertThat(page.locator("#sent li")).hasCount(1);

        page.context().setOffline(true);
        page.navigate(FORM);
        keep(page, one, "FEMALE");
        page.context().setOffline(false);
        assertThat(page.locator("#waiting-count")).hasText("1 deer waits on this device; 1 to be mended");
        assertThat(page.locator("#kept tbody tr")).containsText("taken in already, with other facts");
        page.navigate("/day");
        assertThat(page.getByText("1 deer waits on this device and is not sent."))
                .isVisible();
        page.getByText("See and send").click();
        page.locator("#kept button").first().click();
        assertThat(page.locator("#refusal")).containsText("taken in already, with other facts");
        look(page, "kept-deer-refused", PHONE);
        page.locator("#leave").click();
        page.onDialog(dialog -> dialog.accept());
        page.locator("#kept button").last().click();
        assertThat(page.locator("#waiting-count")).hasText("Nothing waits on this device");
    }

    @Test
    void aWrongScanIsSeenAtOnceWithoutASignal() {
        Deer one = deer.aDeer();
        Deer other = deer.aDeer();
        Page page = signedInAndReady();
        page.context().setOffline(true);
        page.navigate(FORM);
        assertThat(page.locator("#kit")).isFocused();
        String label = one.label(Part.STUB);
        type(page, (label.charAt(0) == 'A' ? "C" : "A") + label.substring(1));
        assertThat(page.locator("#kit-error")).containsText("The check character does not fit");
        assertThat(page.locator("body")).hasClass("wrong-scan");
        type(page, "]C0" + label.toLowerCase(java.util.Locale.ROOT));
        assertThat(page.locator("#kit-name"))
                .hasText(one.kit().substring(0, 4) + "-" + one.kit().substring(4));
        press(page, "[name=sex][value=MALE]");
        press(page, "[name=clinicalSigns][value=SEEN]");
        assertThat(page.locator("#stop")).isVisible();
        assertThat(page.locator("#stop")).containsText("Do not open the head");
        press(page, "[name=stopRead]");
        press(page, "[name=jawStatus][value=COLLECTED_TO_READ]");
        page.locator("#specimens").focus();
        type(page, other.label(Part.NODE_LEFT));
        assertThat(page.locator("#specimens-error")).containsText("was printed for kit");
        page.locator("form.deer button.main").press("Enter");
        assertThat(page.locator("#specimens")).isFocused();
        assertThat(page.locator("#kept tbody tr")).hasCount(0);
        page.locator("#specimens").fill(one.label(Part.NODE_LEFT));
        assertThat(page.locator("#specimens-hint")).containsText("Left node");
        page.locator("form.deer button.main").press("Enter");
        assertThat(page.locator("#kept tbody tr")).hasCount(1);
        page.context().setOffline(false);
        assertThat(page.locator("#sent li")).hasCount(1);
        as("auditor").get("/api/v1/animals/" + one.kit()).then().body("clinicalSigns", equalTo("SEEN"));
    }

    @Test
    void whoeverSignsInNextHasAFormMadeAnew() {
        Page page = signedInAndReady();
        page.navigate("/sign-in");
        until(page, "async () => !await caches.match('/intake/without-signal')");
        assertEquals(true, page.evaluate("async () => !!await caches.match('/first-steps')"));
    }

    @Test
    void theDeviceAndTheServiceTakeTheSameTextsForCodes() {
        Page page = signedIn(DESK, Role.SAMPLER);
        page.navigate(FORM);
        List<String> typed = new ArrayList<>(List.of("", "A", "0794", "]C0", "\u0002]C1A2C4-D6F8-J\u2013K\r"));
        Random random = new Random(20261126);
        String alphabet = CheckSystem.LABELS.alphabet();
        for (int i = 0; i < 300; i++) {
            StringBuilder payload = new StringBuilder();
            for (int at = 0; at < 9; at++) {
                payload.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            String code = payload + CheckSystem.LABELS.check(payload.toString());
            char wrong = alphabet.charAt(random.nextInt(alphabet.length()));
            int at = random.nextInt(10);
            typed.add(code);
            typed.add(code.substring(0, 4) + "-" + code.substring(4, 8) + " "
                    + code.substring(8).toLowerCase());
            typed.add(code.replace('0', 'o').replace('1', 'I'));
            typed.add(code.substring(0, at) + wrong + code.substring(at + 1));
            typed.add(code.substring(0, at) + code.substring(at + 1));
        }
        Object read = page.evaluate("""
                async typed => {
                  const {labelCode} = await import("/static/label-code.js");
                  return typed.map(text => { try { return labelCode(text).code; } catch { return ""; } });
                }
                """, typed);
        assertEquals(typed.stream().map(KeptDeerBrowserTest::code).toList(), read);
    }

    @Test
    void itsPageLooksRightAtBothWidths() {
        look(Role.SAMPLER, FORM, "kept-deer");
    }

    /** A code whose ninth character names no part is one to the device: only the service knows the table of today. */
    private static String code(String typed) {
        try {
            return LabelCode.parse(typed).value();
        } catch (NotACode fault) {
            return fault.getMessage().contains("character 9 names the part")
                    ? typed.replaceAll("[^0-9A-Za-z]", "")
                            .toUpperCase(java.util.Locale.ROOT)
                            .replace('O', '0')
                            .replace('I', '1')
                    : "";
        }
    }

    /** A sampler whose browser keeps the form, as it does once the intake was opened with a signal. */
    private Page signedInAndReady() {
        deer.aDeer();
        Page page = page(PHONE);
        signIn(page, "sampler", SeasonFixture.PASSWORD);
        page.navigate("/intake");
        until(page, """
                async () => await caches.match("/intake/without-signal")
                    && (await navigator.serviceWorker.getRegistration("/intake"))?.active?.state === "activated"
                """);
        page.navigate("/intake");
        until(page, "async () => (await navigator.serviceWorker.ready) && navigator.serviceWorker.controller !== null");
        return page;
    }

    private static void keep(Page page, Deer one, String sex) {
        assertThat(page.locator("#kit")).isFocused();
        type(page, one.label(Part.STUB));
        assertThat(page.locator("#kept-deer")).isVisible();
        press(page, "[name=sex][value=" + sex + "]");
        page.locator("#diedOn").fill(IntakeFixture.DIED_ON);
        press(page, "[name=jawStatus][value=READ]");
        press(page, "[name='jaw.rowSeen'][value=WHOLE]");
        press(page, "[name='jaw.cheekTeeth'][value='6']");
        press(page, "[name='jaw.thirdTooth.cusps'][value='3']");
        press(page, "[name='jaw.sixthTooth.dentine'][value=NOT_EXPOSED]");
        page.locator("#specimens").focus();
        type(page, one.label(Part.NODE_LEFT));
        type(page, one.label(Part.NODE_RIGHT));
        assertThat(page.locator("body")).not().hasClass("wrong-scan");
        page.locator("form.deer button.main").press("Enter");
    }

    private static void type(Page page, String text) {
        page.keyboard().type(text);
        page.keyboard().press("Enter");
    }

    private static void press(Page page, String control) {
        page.locator(control).press("Space");
    }
}
