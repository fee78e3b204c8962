package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.prevalence.comparison.ClassFixture;
import org.dentary.prevalence.comparison.ClassFixture.Class;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The epidemiologist asked for a number in ten minutes. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ComparisonsBrowserTest extends Browser {
    @Inject
    ClassFixture classes;

    private int actions;
    private String here;
    private String there;

    @BeforeEach
    void aSeasonAndTheOneBefore() {
        classes.herd("T_HERD", 52, 51, 29, 36, 38, 94);
        there = classes.season(List.of(
                new Class("FAWN", "MALE", 0, 40),
                new Class("FAWN", "FEMALE", 1, 45),
                new Class("YEARLING", "MALE", 5, 100),
                new Class("YEARLING", "FEMALE", 3, 80),
                new Class("ADULT", "MALE", 20, 180),
                new Class("ADULT", "FEMALE", 12, 160)));
        here = classes.season(List.of(
                new Class("FAWN", "MALE", 1, 60),
                new Class("FAWN", "FEMALE", 0, 55),
                new Class("YEARLING", "MALE", 9, 120),
                new Class("YEARLING", "FEMALE", 4, 90),
                new Class("ADULT", "MALE", 41, 210),
                new Class("ADULT", "FEMALE", 18, 190)));
    }

    /** Are adult males found with it more often than adult females, and is it more than last season in this herd? */
    @Test
    void theTenMinuteQuestionTakesAtMostTenActions() {
        String cut = classes.cut(here, "For the commission");
        String before = classes.cut(there, "Final");
        Page page = signedIn(DESK, Role.EPIDEMIOLOGIST);
        page.navigate("/");
        act(() -> page.click(".rail >> text=Prevalence"));
        act(() -> page.selectOption("#season", here));
        act(() -> page.click("button.main"));
        act(() -> page.click("p.actions >> text=Comparisons"));
        act(() -> page.selectOption("#cut", cut));
        act(() -> page.selectOption("#with", before));
        act(() -> page.selectOption("#herd", "T_HERD"));
        act(() -> page.fill("#ageAdult", "4"));
        act(() -> page.click("button.main"));
        assertThat(page.locator("h3:has-text('Adult: shown') + p"))
                .containsText("Detected in 41 of 210 adult males (19.5 %) and in 18 of 190 adult females (9.5 %)");
        assertThat(page.locator("h2:has-text('Seasons, standardized') + h3 + p"))
                .containsText("No difference shown, which does not say that there is none.");
        assertThat(page.locator("main")).containsText("data cut “For the commission”");
        assertTrue(actions <= 10, actions + " actions");
        System.err.println("The ten-minute question took " + actions + " actions.");
        shoot(page, "comparisons-whole");
    }

    private void act(Runnable action) {
        actions++;
        action.run();
    }

    @Test
    void thePageReadsWellAtBothWidthsInLightAndDark() {
        look(
                Role.EPIDEMIOLOGIST,
                "/prevalence/comparisons?season=" + here + "&with=" + there
                        + "&herd=T_HERD&ageFawn=0.5&ageYearling=1.5&ageAdult=4",
                "comparisons");
    }

    @Test
    void aFaultKeepsTheFormAndSaysWhatToChange() {
        Page page = signedIn(PHONE, Role.EPIDEMIOLOGIST);
        page.navigate("/prevalence/comparisons?season=" + here + "&ageAdult=old");
        assertThat(page.locator(".fault")).containsText("'old' is not an age; give years from 0 to 30");
        assertThat(page.locator("#ageAdult")).hasValue("old");
        shoot(page, "comparisons-fault");
    }
}
