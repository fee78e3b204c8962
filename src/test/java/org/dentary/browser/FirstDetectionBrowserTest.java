package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.result.FindingsFixture;
import org.dentary.result.correction.CorrectionFixture;
import org.dentary.result.notification.NotificationFixture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A first detection with its owned steps, and the correction that comes after its release, on the pages. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class FirstDetectionBrowserTest extends Browser {
    @Inject
    FindingsFixture laboratory;

    @Inject
    CorrectionFixture correction;

    @Inject
    NotificationFixture telling;

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void aStepIsGivenAnOwnerAndSettledAndTheListIsToldInItsOrder(int width) {
        String unit = laboratory.unitWithoutTheDisease();
        Deer deer = laboratory.atTheLaboratory(unit);
        laboratory.atTheLaboratory(unit);
        laboratory.finds(deer, "SCREENING", "SUSPECT", null).statusCode(201);
        Page page = signedIn(width, Role.LIAISON);
        page.navigate("/incidents");
        check(page, "incidents-" + width, width);
        page.navigate("/incidents/" + CorrectionFixture.incidentIn(unit));
        check(page, "incident-open-" + width, width);
        Locator step = page.locator("form[action$='/steps/CONFIRM_IDENTITY']");
        openAround(step);
        step.locator("[name=owner]").selectOption("T_LIAISON");
        step.locator("[name=state]").selectOption("DONE");
        step.locator("button").click();
        assertThat(page.locator(".fault")).containsText("Say how identity was confirmed");
        step = page.locator("form[action$='/steps/CONFIRM_IDENTITY']");
        openAround(step);
        step.locator("[name=owner]").selectOption("T_LIAISON");
        step.locator("[name=state]").selectOption("DONE");
        step.locator("[name=note]").fill("No DNA to be had: the jaw's two kit labels and the photograph agree");
        step.locator("button").click();
        assertThat(page.locator("#main")).containsText("two kit labels and the photograph agree");
        Locator second = page.locator("form[action$='/tellings/2']");
        openAround(second);
        second.locator("[name=at]").fill("2025-11-22T10:00");
        second.locator("button").click();
        assertThat(page.locator(".fault")).containsText("before");
        check(page, "incident-step-" + width, width);
    }

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void aCorrectionIsToldToEachWhoHadTheEarlierWord(int width) {
        telling.ensure();
        Deer deer = correction.releasedDetection();
        correction.tellsHunter(deer, "DETECTED").statusCode(201);
        correction.cut("of " + deer.kit());
        correction.corrects(deer, "NOT_DETECTED", "CORRECTED");
        Page page = signedIn(width, Role.NOTIFIER);
        assertThat(page.locator(".tiles").first()).containsText("to tell");
        check(page, "home-notifier-" + width, width);
        page.click(".tiles a[href='/corrections']");
        check(page, "corrections-" + width, width);
        page.navigate("/corrections/" + CorrectionFixture.newest(deer));
        check(page, "correction-" + width, width);
        Locator cut = page.locator("section:has(h2:has-text('of " + deer.kit() + "'))");
        assertThat(cut).containsText("counted in this data cut");
        cut.locator("summary").click();
        cut.locator("[name=channel]").selectOption("MESSAGE");
        cut.locator("[name=result]").selectOption("SENT");
        cut.locator("[name=note]").fill("its maker will mark it superseded");
        cut.locator("button").click();
        assertThat(page.locator("section:has(h2:has-text('of " + deer.kit() + "'))"))
                .containsText("Knows of it");
        assertThat(page.locator("dl.facts").first()).containsText("1 of 9");
        check(page, "correction-told-" + width, width);
    }

    @Test
    void theRoomsOfResultsAreFitToBeReadInLightAndDark() {
        Deer deer = laboratory.atTheLaboratory(org.dentary.SeasonFixture.UNIT);
        laboratory.finds(deer, "SCREENING", "UNSUITABLE", "AUTOLYSED").statusCode(201);
        look(Role.LIAISON, "/unsuitable-tissue", "unsuitable");
        look(Role.LIAISON, "/reviews", "reviews");
        look(Role.LIAISON, "/column-maps", "column-maps");
        look(Role.LIAISON, "/incidents", "incidents");
        look(Role.NOTIFIER, "/corrections?state=ALL", "corrections-all");
        look(Role.NOTIFIER, "/notifications", "telling");
        look(null, "/stub", "stub");
    }

    private static void openAround(Locator form) {
        form.evaluate("form => form.closest('details') && (form.closest('details').open = true)");
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
