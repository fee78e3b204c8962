package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.file.Path;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.ageing.AgeingFixture;
import org.dentary.prevalence.comparison.ClassFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** An epidemiologist who is asked whether misread jaws could make the step between yearlings and adults. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class AgeingErrorBrowserTest extends Browser {
    private static final double[][] PLAN = {{.985, .015, 0}, {.01, .92, .07}, {0, .05, .95}};
    private static final double[][] MALES = {{48, 2, 0}, {1, 60, 4}, {0, 9, 91}};
    private static final double[][] FEMALES = {{50, 0, 0}, {0, 22, 3}, {0, 3, 97}};

    @Inject
    ClassFixture classes;

    @Inject
    LineFixture lines;

    @Inject
    AgeingFixture ageing;

    private String season;
    private String stated;

    @BeforeEach
    void aSeasonAndAMatrix() {
        season = classes.season(AgeingFixture.HERE);
        lines.add(season, 1, ALine.of("UNKNOWN", "MALE", "DETECTED"));
        lines.add(season, 11, ALine.of("UNKNOWN", "MALE", "NOT_DETECTED"));
        stated = ageing.stated(PLAN);
    }

    @Test
    void fromThePrevalencePageToTheWhatIfAndItsFile() {
        Page page = signedIn(DESK, Role.EPIDEMIOLOGIST);
        page.navigate("/prevalence?season=" + season);
        page.click("p.actions >> text=What-if: ageing error");
        assertThat(page.locator("h1")).hasText("What-if: ageing error");
        assertThat(page.locator("#season")).hasValue(season);
        page.selectOption("#matrix", stated);
        page.click("button.main");
        assertThat(page.locator("#pattern")).containsText("What-if: Chronic wasting disease by age class, " + season);
        assertThat(page.locator("main")).containsText("No interval is claimed");
        assertThat(page.locator("main")).containsText("The matrix is stated, not measured");
        assertThat(page.locator("tr:has(th:text-is('Male')):has(td:text-is('Yearling'))")
                        .first())
                .containsText("9 of 120");
        assertThat(page.locator("tr:has(th:text-is('Male')):has(td:text-is('Unknown age'))"))
                .containsText("left as it is");
        Download pdf = page.waitForDownload(() -> page.click("text=What-if as PDF"));
        assertTrue(pdf.suggestedFilename().equals("ageing-error-what-if-" + season + ".pdf"), pdf.suggestedFilename());
        Download file = page.waitForDownload(() -> page.click("text=What-if as CSV"));
        assertTrue(
                file.suggestedFilename().equals("ageing-error-what-if-" + season + ".csv"), file.suggestedFilename());
        file.saveAs(Path.of("target", "screenshots", "ageing-error.csv"));
    }

    @Test
    void aFaultKeepsWhatWasAskedAndSaysWhatToDo() {
        Page page = signedIn(PHONE, Role.EPIDEMIOLOGIST);
        page.navigate("/prevalence/ageing-error?season=" + season
                + "&matrix=KNOWN_AGE&species=MULE_DEER&station=T_STATION_1");
        assertThat(page.locator(".fault")).containsText("Have jaws of known age read blind");
        assertThat(page.locator("#matrix")).hasValue("KNOWN_AGE");
        assertThat(page.locator("#species")).hasValue("MULE_DEER");
        assertThat(page.locator("form.filters input[name=station]")).hasValue("T_STATION_1");
        shoot(page, "ageing-error-fault");
    }

    @Test
    void thePageReadsWellAtBothWidthsInLightAndDark() {
        look(Role.EPIDEMIOLOGIST, "/prevalence/ageing-error?season=" + season + "&matrix=" + stated, "ageing-error");
        look(
                Role.AUDITOR,
                "/prevalence/ageing-error?season=" + season + "&matrix=" + ageing.cited(MALES, FEMALES),
                "ageing-error-cited");
    }

    /** {@code -Ddentary.write-docs=true} keeps the picture of the guide. */
    @Test
    void inGreyAndWithTheMatrixOfTheDemo() {
        Page page = signedIn(DESK, Role.EPIDEMIOLOGIST);
        page.navigate("/prevalence/ageing-error?season=" + season + "&matrix=" + ageing.ofTheDemo());
        assertThat(page.locator("main")).containsText("Stated for illustration in the invented agency's plan of 2026");
        if (Boolean.getBoolean("dentary.write-docs")) {
            page.setViewportSize(DESK, 1600);
            page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("docs", "pictures", "ageing-error.png")));
        }
        page.evaluate("document.documentElement.style.filter = 'grayscale(1)'");
        shoot(page, "ageing-error-grey");
    }
}
