package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.comparison.ClassFixture;
import org.dentary.prevalence.truth.TruthFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The epidemiologist asks what stands behind the apparent prevalence. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class TruePrevalenceBrowserTest extends Browser {
    @Inject
    TruthFixture truths;

    @Inject
    LineFixture lines;

    @Inject
    ClassFixture classes;

    private String season;
    private String set;

    @BeforeEach
    void aSeasonOfTestedDeer() {
        season = truths.season(41, 210);
        truths.add(season, "ADULT", "FEMALE", 18, 190);
        truths.add(season, "YEARLING", "MALE", 9, 120);
        truths.add(season, "YEARLING", "FEMALE", 2, 90);
        truths.add(season, "FAWN", "MALE", 0, 25);
        List<String> obex = lines.add(season, 12, ALine.of("ADULT", "FEMALE", "NOT_DETECTED"));
        truths.tested(obex, "B1", "OBEX", "T_SCREEN", "SCREENING", "NOT_DETECTED", false);
        set = truths.stated("0.911", "0.957");
    }

    @Test
    void fromThePrevalencePageToAFigureWithItsSet() {
        String cut = classes.cut(season, "For the commission");
        Page page = signedIn(DESK, Role.EPIDEMIOLOGIST);
        page.navigate("/prevalence?season=" + season + "&cut=" + cut + "&sex=FEMALE");
        page.click("nav >> text=True prevalence");
        assertThat(page.locator("#season")).hasValue(season);
        assertThat(page.locator("#cut")).hasValue(cut);
        assertThat(page.locator("#sets")).containsText("Sets of test performance");
        page.selectOption("#performance", set);
        page.click("button.main");
        assertThat(page.locator("main")).containsText("data cut “For the commission”".replace("data", "Data"));
        assertThat(page.locator("main")).containsText("Only animals with Sex: Female.");
        assertThat(page.locator("table").first().locator("tbody tr:has-text('Adult')"))
                .containsText("18");
        assertThat(page.locator("#performance")).hasValue(set);
        assertThat(page.locator("p.caution").first()).containsText("counted animals, 280 were tested by that alone");
        page.selectOption("#by", "sex");
        page.click("button.main");
        assertThat(page.locator("main")).containsText("Only animals with Sex: Female.");
    }

    @Test
    void thePageReadsWellAtBothWidthsInLightAndDark() {
        Page page = signedIn(DESK, Role.EPIDEMIOLOGIST);
        page.navigate("/true-prevalence?season=" + season + "&performance=" + set);
        assertThat(page.locator("#figures")).containsText("Chronic wasting disease, " + season);
        assertThat(page.locator("figure svg").first()).isVisible();
        look(Role.EPIDEMIOLOGIST, "/true-prevalence?season=" + season + "&performance=" + set, "true-prevalence");
        look(Role.EPIDEMIOLOGIST, "/true-prevalence?season=" + season, "true-prevalence-sets");
    }

    @Test
    void aRelativeSetIsRefusedInWordsAndTheFormKeepsWhatWasChosen() {
        String relative = truths.imported("RELATIVE", "0.983,0.999,,,,");
        Page page = signedIn(PHONE, Role.EPIDEMIOLOGIST);
        page.navigate("/true-prevalence?season=" + season + "&by=sex&performance=" + relative);
        assertThat(page.locator(".fault")).containsText("says nothing of infected deer that both miss");
        assertThat(page.locator("#performance")).hasValue(relative);
        assertThat(page.locator("#by")).hasValue("sex");
        assertThat(page.locator("#sets")).isVisible();
        shoot(page, "true-prevalence-refused");
    }
}
