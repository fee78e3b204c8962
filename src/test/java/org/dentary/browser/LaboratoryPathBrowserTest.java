package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.dentary.SeasonFixture;
import org.dentary.WholeLists;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.story.Words;
import org.dentary.submission.SubmissionFixture;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What goes wrong on the way to the laboratory and back: two short, a re-route, a suspect, its confirmation, a correction. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class LaboratoryPathBrowserTest extends Browser {
    @Inject
    SeasonFixture season;

    @Inject
    SubmissionFixture bench;

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void aBoxTwoShortIsSettledOneTubeGoesElsewhereAndASuspectIsConfirmedAndPutRight(int width) {
        season.ensure();
        String suspect = bench.aNode();
        String lost = bench.aNode();
        String found = bench.aNode();
        String elsewhere = bench.aNode();
        String path = "/submissions/" + bench.sent(suspect, lost, found, elsewhere);
        Page page = signedIn(width, Role.LIAISON);
        reRoute(page, path, elsewhere, width);
        countIn(page, path, suspect);
        assertThat(page.locator("h1 + p")).containsText("1 received, 2 missing");
        for (String missing : List.of(lost, found)) {
            assertThat(row(page, missing)).containsText("Short");
        }
        assertThat(row(page, elsewhere)).containsText("Recalled");
        look(page, "lab-path-two-short-" + width, width);
        page.navigate("/custody/discrepancies");
        assertThat(page.locator("#main")).containsText(Words.asLabel(lost));
        assertThat(page.locator("#main")).containsText(Words.asLabel(found));
        look(page, "lab-path-discrepancies-" + width, width);
        String mark = "A-" + suspect.substring(0, 8);
        report(page, suspect, mark);
        page.navigate("/results");
        assertThat(page.locator("tr", new Page.LocatorOptions().setHasText("report.csv"))
                        .first())
                .containsText(java.util.regex.Pattern.compile("\\w{3} \\d+, \\d{4}, \\d\\d:\\d\\d C[SD]T"));
        page.navigate("/results/release/" + suspect.substring(0, 8));
        assertThat(page.locator("#outcome")).hasText("Suspect");
        look(page, "lab-path-suspect-" + width, width);
        finding(page, "/results/findings/new", suspect, mark, "Detected", "Final");
        page.navigate("/results/release/" + suspect.substring(0, 8));
        assertThat(page.locator("#outcome")).containsText("Detected");
        assertThat(page.locator("#findings + *")).isVisible();
        page.locator("tr", new Page.LocatorOptions().setHasText("Confirmatory"))
                .locator("a")
                .click();
        assertThat(page.locator("h1")).hasText("Correct a finding");
        look(page, "lab-path-correct-" + width, width);
        finding(page, null, suspect, mark, "Not detected", "Corrected");
        page.navigate("/results/release/" + suspect.substring(0, 8));
        assertThat(page.locator("#main")).containsText("Nothing awaits release");
        assertThat(page.locator("#main")).containsText("replaced");
        look(page, "lab-path-put-right-" + width, width);
        page.navigate("/animals/" + suspect.substring(0, 8));
        assertThat(page.locator("#main")).containsText("Not detected");
    }

    private void reRoute(Page page, String path, String code, int width) {
        page.navigate(path);
        page.locator("summary:has-text('Something comes back')").click();
        page.fill("#recalled", code);
        page.fill("#recallReason", "meant for the other laboratory");
        look(page, "lab-path-recall-" + width, width);
        page.click("text=I have it again");
        assertThat(row(page, code)).containsText("Recalled");
        page.navigate("/submissions");
        assertTrue(WholeLists.inTheFile("liaison", "/api/v1/submissions/waiting.csv")
                .contains(code));
        page.selectOption("#laboratory", "T_LAB_CONFIRMING");
        page.click("text=Begin packing");
        page.fill("#code", code);
        page.fill("#overrideReason", "agreed with the laboratory by telephone");
        page.locator("#pack ~ form button.main").click();
        assertThat(page.locator("[role=status]")).containsText("Packed: " + Words.asLabel(code));
    }

    private void countIn(Page page, String path, String code) {
        page.navigate(path);
        page.fill("#codes", code);
        page.click("button:has-text('Count in')");
    }

    private static void report(Page page, String node, String mark) {
        String file = "specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on\r\n" + node + ","
                + mark + ",T_SCREEN,SCREENING,SUSPECT,2025-11-18,2025-11-19\r\n";
        page.navigate("/results");
        page.selectOption("#laboratory", "T_LAB");
        page.setInputFiles("#file", new FilePayload("report.csv", "text/csv", file.getBytes(StandardCharsets.UTF_8)));
        page.click("text=Look it through");
        page.click("text=Post the findings");
        assertThat(page.locator(".done")).containsText("Posted: 1 line.");
    }

    /** Fills the form by hand; a correction's form is there already and names the tissue. */
    private static void finding(Page page, String path, String node, String mark, String word, String status) {
        if (path != null) {
            page.navigate(path);
            page.fill("#specimens", node);
        }
        page.selectOption("#laboratory", "T_LAB");
        page.fill("#accession", mark + "C");
        page.selectOption("#method", "T_CONFIRM");
        page.selectOption("#stage", "CONFIRMATORY");
        page.selectOption("#finding", word.toUpperCase(java.util.Locale.ROOT).replace(' ', '_'));
        page.selectOption("#status", status.toUpperCase(java.util.Locale.ROOT));
        page.fill("#testedOn", "2025-11-24");
        page.fill("#reportedOn", "2025-11-25");
        page.click("text=Record the finding");
        assertThat(page.locator(".done")).containsText("Recorded");
    }

    private static com.microsoft.playwright.Locator row(Page page, String code) {
        return page.locator("tr", new Page.LocatorOptions().setHasText(Words.asLabel(code)))
                .first();
    }
}
