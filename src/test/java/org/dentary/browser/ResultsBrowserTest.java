package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.submission.SubmissionFixture;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A laboratory's file and a suspect on the pages, at a phone's width and at a desk. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ResultsBrowserTest extends Browser {
    @Inject
    SeasonFixture season;

    @Inject
    SubmissionFixture bench;

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void aFileIsPostedWithoutItsFaultyLine(int width) {
        season.ensure();
        Deer deer = bench.aDeerSent();
        Page page = signedIn(width, Role.LIAISON);
        page.navigate("/results");
        page.selectOption("#laboratory", "T_LAB");
        page.setInputFiles("#file", new FilePayload("november.csv", "text/csv", file(deer)));
        page.click("text=Look it through");
        look(page, "results-preview-" + width, width);
        page.check("[name=leaveOutFaulty]");
        page.click("text=Post the findings");
        assertThat(page.locator(".done")).containsText("Posted: 1 line.");
        page.navigate("/results");
        look(page, "results-" + width, width);
        page.locator("main a", new Page.LocatorOptions().setHasText("Lines left out"))
                .click();
        look(page, "results-left-out-" + width, width);
        page.locator("td details > summary").first().press("Enter");
        page.getByLabel("Note").first().fill("no tube of ours, by telephone");
        page.getByLabel("Note").first().press("Enter");
        page.navigate("/results/held-lines?all=true");
        assertThat(page.getByText("no tube of ours, by telephone").first()).isVisible();
        page.navigate("/results/release/" + deer.kit());
        look(page, "results-release-" + width, width);
        page.navigate("/results/findings/new?specimen=" + deer.label(Part.NODE_LEFT));
        look(page, "results-finding-" + width, width);
        page.navigate("/results/tests?from=2025-11-01&to=2025-11-30");
        look(page, "results-tests-" + width, width);
    }

    private static byte[] file(Deer deer) {
        return ("specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on\r\n"
                        + deer.label(Part.NODE_LEFT)
                        + ",A-7,T_SCREEN,SCREENING,SUSPECT,2025-11-18,2025-11-19\r\n"
                        + "1E5,A-7,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19\r\n")
                .getBytes(StandardCharsets.UTF_8);
    }
}
