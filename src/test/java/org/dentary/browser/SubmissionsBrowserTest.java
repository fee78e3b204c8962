package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.dentary.SeasonFixture;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Part;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.story.Words;
import org.dentary.submission.SubmissionFixture;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The packing bench with nothing but a scanner and a keyboard, at a phone's width and at a desk. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SubmissionsBrowserTest extends Browser {
    @Inject
    SeasonFixture season;

    @Inject
    SubmissionFixture bench;

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void theBenchAnswersEachScanAndIsReadyForTheNext(int width) {
        season.ensure();
        String old = bench.aNode();
        Page page = signedIn(width, Role.LIAISON);
        page.navigate("/submissions");
        look(page, "submissions-" + width, width);
        page.selectOption("#laboratory", "T_LAB");
        page.locator("button.main").focus();
        page.waitForNavigation(() -> page.keyboard().press("Enter"));
        readyToScan(page);
        scan(page, "NOTACODE");
        assertThat(page.locator("[role=alert]")).isVisible();
        readyToScan(page);
        // A second scan replaces the faulty one: a scanner does not empty the field first.
        scan(page, old);
        assertThat(page.locator("[role=alert]")).containsText("days from collection");
        look(page, "submission-refused-" + width, width);
        page.locator("#overrideReason").fill("agreed with the laboratory");
        page.waitForNavigation(() -> page.keyboard().press("Enter"));
        assertThat(page.locator("[role=status]")).containsText("Packed: " + Words.asLabel(old));
        readyToScan(page);
        look(page, "submission-packed-" + width, width);
    }

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void halfOfANodeIsPutIntoFormalinWhereItIsPacked(int width) {
        season.ensure();
        String node = bench.aNode();
        String piece = LabelCode.parse(node).kit().label(Part.SPARE_1).value();
        Page page = page(width);
        signIn(page, "liaison", SeasonFixture.PASSWORD);
        page.navigate("/submissions");
        page.selectOption("#laboratory", "T_LAB");
        page.click("button.main");
        page.click("text=A piece is cut from a tube");
        page.locator("#pieceOf").focus();
        page.keyboard().type(node);
        page.keyboard().press("Tab");
        look(page, "submission-piece-" + width, width);
        scan(page, piece);
        assertThat(page.locator("[role=status]")).containsText("Piece recorded: " + Words.asLabel(piece));
        readyToScan(page);
    }

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void aBoxOneShortIsCountedInByScanning(int width) {
        season.ensure();
        String here = bench.aNode();
        String lost = bench.aNode();
        Page page = signedIn(width, Role.LIAISON);
        page.navigate("/submissions/" + bench.sent(here, lost));
        page.locator("#codes").focus();
        page.keyboard().type(here);
        page.keyboard().press("Enter");
        // Past what is folded away: damage, a photo, an earlier hour.
        page.keyboard().press("Tab");
        page.keyboard().press("Tab");
        page.waitForNavigation(() -> page.keyboard().press("Enter"));
        assertThat(page.locator("h1 + p")).containsText("1 received, 1 missing");
        assertThat(page.locator("tr", new Page.LocatorOptions().setHasText(Words.asLabel(lost))))
                .containsText("Short");
        look(page, "submission-short-" + width, width);
        page.click("text=Something is damaged, a photo");
        look(page, "submission-damaged-" + width, width);
    }

    /** Focus is in the field for the tube's code, and what it held is replaced by the next scan. */
    private static void readyToScan(Page page) {
        until(page, "document.activeElement.id === 'code'");
        Object replaced = page.evaluate(
                "document.activeElement.selectionEnd - document.activeElement.selectionStart === document.activeElement.value.length");
        assertEquals(true, replaced, "what the field holds is replaced by the next scan");
    }
}
