package org.dentary.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.junit.jupiter.api.Test;

/** The epidemiologist's desk: a figure, its document, a cut, a question kept and asked again, answers checked again. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ReportsBrowserTest extends Browser {
    @Inject
    LineFixture lines;

    private String season() {
        String season = lines.season();
        lines.add(season, 81, ALine.of("ADULT", "MALE", "DETECTED"));
        lines.add(season, 182, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        lines.add(season, 148, ALine.of("ADULT", "FEMALE", "NOT_DETECTED").in(SeasonFixture.SOUTHERN_UNIT));
        lines.add(season, 3, ALine.of("YEARLING", "FEMALE", "DETECTED"));
        lines.add(season, 20, ALine.of("YEARLING", "FEMALE", "NOT_DETECTED"));
        lines.sent(
                lines.add(season, 70, ALine.of("FAWN", "FEMALE", "PENDING")),
                SeasonFixture.LABORATORY,
                "2025-11-10T12:00:00Z");
        lines.footnote(
                lines.add(season, 30, ALine.of("UNKNOWN", "FEMALE", "NOT_DETECTED")),
                "POOL",
                false,
                "NOT_EXAMINED",
                "Head not brought");
        return season;
    }

    @Test
    void pagesOfTheReportAreReadableAtBothWidthsInLightAndDark() {
        String season = season();
        look(Role.EPIDEMIOLOGIST, "/prevalence?season=" + season, "report");
        look(Role.EPIDEMIOLOGIST, "/prevalence?season=" + season + "&by=managementUnit,ageClass", "report-units");
        look(Role.EPIDEMIOLOGIST, "/line-list?season=" + season, "report-lines");
    }

    @Test
    void rowsAndColumnsAreChosenOnThePageAndEveryCellStaysInSight() {
        String season = season();
        Page page = signedIn(DESK, Role.EPIDEMIOLOGIST);
        page.navigate("/prevalence?season=" + season);
        page.getByLabel("By", new Page.GetByLabelOptions().setExact(true)).selectOption("ageClass");
        page.getByLabel("As columns").selectOption("sex");
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName("Show").setExact(true))
                .click();
        Locator table = page.getByRole(AriaRole.GROUP, new Page.GetByRoleOptions().setName("Rows and columns"));
        String adults = table.getByRole(AriaRole.ROW, new Locator.GetByRoleOptions().setName("Adult"))
                .first()
                .innerText()
                .replaceAll("\\s+", " ");
        assertTrue(adults.contains("81 of 263 30.8 %"), adults);
        assertEquals("sex", page.getByLabel("As columns").inputValue(), "the form keeps what was asked");
        assertEquals(0, page.locator("details table:visible").count());
        page.getByText("Each cell as a row").click();
        assertEquals(1, page.locator("details table:visible").count());
        look(Role.EPIDEMIOLOGIST, "/prevalence?by=ageClass&columns=sex&season=" + season, "report-across");
        // A question that no list offers stays the question when it is shown again.
        page.navigate("/prevalence?by=sex,month&season=" + season);
        assertEquals(
                "sex,month",
                page.getByLabel("By", new Page.GetByLabelOptions().setExact(true))
                        .inputValue());
    }

    @Test
    void whatCountsIsTickedAndAnythingElseIsWarnedAbout() {
        String season = season();
        lines.add(season, 11, ALine.of("ADULT", "MALE", "NOT_DETECTED").from("VEHICLE"));
        Page page = signedIn(DESK, Role.EPIDEMIOLOGIST);
        page.navigate("/prevalence?season=" + season);
        assertEquals(0, page.getByText("Chosen mortality source").count());
        page.getByText("More choices").click();
        assertTrue(page.getByLabel("Hunter harvest").isChecked());
        page.getByLabel("Vehicle").check();
        shoot(page, "report-choices-" + DESK);
        assertAccessible(page);
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName("Show").setExact(true))
                .click();
        page.getByText("Chosen mortality source: Hunter harvest, Vehicle").waitFor();
        assertTrue(page.getByLabel("Vehicle").isChecked());
        assertEquals(
                "475",
                page.locator("tfoot td.num").first().textContent(),
                "464 taken by hunters and 11 hit by vehicles");
    }

    /** The question asked in the corridor: how common in adult bucks of one unit, with the cautious interval, on paper. */
    @Test
    void theTenMinuteQuestionTakesAtMostTenActions() throws IOException {
        String season = season();
        Page page = signedIn(DESK, Role.EPIDEMIOLOGIST);
        int actions = 0;
        page.getByRole(
                        AriaRole.LINK,
                        new Page.GetByRoleOptions().setName("Prevalence").setExact(true))
                .first()
                .click();
        actions++;
        page.getByLabel("Season", new Page.GetByLabelOptions().setExact(true)).selectOption(season);
        actions++;
        page.getByLabel("Unit", new Page.GetByLabelOptions().setExact(true)).selectOption(SeasonFixture.UNIT);
        actions++;
        page.getByLabel("Interval", new Page.GetByLabelOptions().setExact(true)).selectOption("CLOPPER_PEARSON");
        actions++;
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName("Show").setExact(true))
                .click();
        actions++;
        String row = page.getByRole(AriaRole.ROW, new Page.GetByRoleOptions().setName("Adult Male"))
                .first()
                .innerText()
                .replaceAll("\\s+", " ");
        // Newcombe 1998, Stat Med 17:857-872: 81/263, exact limits .2527 and .3676.
        assertTrue(row.contains("263 81 30.8 % 25.3 % to 36.8 %"), row);
        Download pdf = page.waitForDownload(
                () -> page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Report as PDF"))
                        .click());
        actions++;
        assertTrue(Files.size(pdf.path()) > 10_000);
        assertTrue(actions <= 10, actions + " actions");
    }

    @Test
    void onAPhoneTheFiguresComeFirstAndTheQuestionOpens() {
        Page page = signedIn(PHONE, Role.EPIDEMIOLOGIST);
        for (String path : List.of("/prevalence", "/line-list", "/chance-of-detection", "/pictures")) {
            page.navigate(path + "?season=" + season());
            Locator choices = page.locator("#season");
            assertFalse(choices.isVisible(), path);
            page.locator("details.fold > summary").press("Enter");
            assertTrue(choices.isVisible(), path);
            assertEquals("Prevalence", page.locator(".rail [aria-current]").innerText(), path);
        }
        page.navigate("/prevalence?season=" + season());
        assertTrue(page.locator("#figures").boundingBox().y < 500);
        shoot(page, "report-phone-figures");
        assertEquals(
                0,
                page.locator("[aria-label='Prevalence table'] thead th:has-text('Prevalence')")
                        .evaluate("e => Math.max(0, Math.floor(e.getBoundingClientRect().right"
                                + " - e.closest('.scroll').getBoundingClientRect().right))"));
    }

    @Test
    void onPaperStandTheFiguresWithoutTheForm() {
        Page page = signedIn(DESK, Role.EPIDEMIOLOGIST);
        page.navigate("/prevalence?season=" + season());
        assertTrue(page.locator("form.filters").isVisible());
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(com.microsoft.playwright.options.Media.PRINT));
        assertFalse(page.locator("form.filters").isVisible());
        assertTrue(page.locator("#figures").isVisible());
    }

    @Test
    void onAPhoneThePictureKeepsItsLettering() {
        Page page = signedIn(PHONE, Role.EPIDEMIOLOGIST);
        page.navigate("/prevalence?season=" + season());
        Locator lettering = page.locator(".on-narrow svg text").first();
        assertTrue(lettering.isVisible());
        assertTrue(
                ((Number) lettering.evaluate("e => e.getBoundingClientRect().height")).doubleValue() >= 12,
                "letters are as high as those of the page's small print");
        assertEquals(0, page.locator(".on-wide svg:visible").count());
    }

    @Test
    void aNumberItsDocumentACutAndTheSameQuestionAgain() throws IOException {
        String season = season();
        Page page = signedIn(DESK, Role.EPIDEMIOLOGIST);
        page.navigate("/data-cuts?season=" + season);
        page.getByLabel("Name").first().fill("First");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Cut the season as it is now"))
                .click();
        page.getByText("What was on its way when each was made").waitFor();
        shoot(page, "report-cuts-" + DESK);
        assertAccessible(page);
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("First"))
                .first()
                .click();
        page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setName("From taken to counted"))
                .waitFor();
        Download pdf = page.waitForDownload(
                () -> page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Report as PDF"))
                        .click());
        assertTrue(new String(Files.readAllBytes(pdf.path()), java.nio.charset.StandardCharsets.ISO_8859_1)
                .startsWith("%PDF-"));
        String name = "Monthly " + UUID.randomUUID();
        page.getByLabel("Name, to ask it again of another cut").fill(name);
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Keep the question"))
                .click();
        Locator kept = page.getByRole(AriaRole.REGION, new Page.GetByRoleOptions().setName(name));
        kept.waitFor();
        shoot(page, "report-saved-" + DESK);
        assertAccessible(page);
        assertNoSidewaysScroll(page);
        kept.getByLabel("Ask it of")
                .selectOption(new com.microsoft.playwright.options.SelectOption().setLabel(season + ", First"));
        kept.getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("Ask again"))
                .click();
        page.waitForURL(url -> url.contains("/prevalence?season=" + season));
        assertTrue(page.content().contains("Data cut “First”"));
        page.navigate("/data-cuts/rechecks");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Check now"))
                .click();
        page.getByText("stored answers computed again").waitFor();
        shoot(page, "report-rechecks-" + DESK);
        assertAccessible(page);
    }
}
