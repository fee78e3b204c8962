package org.dentary.browser;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.Random;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.jaw.drawing.JawDrawings;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.platform.photo.PhotoFixture;
import org.junit.jupiter.api.Test;

/** Photos of jaws in a browser: added on a phone, seen where jaws are read, erased. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class JawPhotosBrowserTest extends Browser {
    @Inject
    IntakeFixture deer;

    @Test
    void aSamplerAddsAPhotoOnAPhoneAndReadsTheJawFromIt() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts().put("jawStatus", "PHOTO_TO_READ"));
        Page page = page(PHONE);
        signIn(page, "sampler", SeasonFixture.PASSWORD);
        page.navigate("/animals/" + one.kit());
        page.locator("a[href$='/photos']").first().click();
        assertEquals("image/*", page.getAttribute("#photo", "accept"));
        assertEquals("environment", page.getAttribute("#photo", "capture"));
        page.setInputFiles("#photo", new FilePayload("jaw.jpg", "image/jpeg", photoOfAJaw()));
        page.click("button.main");
        page.waitForSelector("figure.photo img");
        assertTrue((Boolean) page.evaluate(
                "(async () => { const i = document.querySelector('figure.photo img'); await i.decode(); return"
                        + " i.naturalWidth === 1320; })()"));
        as("sampler").get("/api/v1/animals/" + one.kit() + "/jaw-photos").then().body("items", hasSize(1));
        look(Role.SAMPLER, "/animals/" + one.kit() + "/photos", "jaw-photos");
        look(Role.SAMPLER, "/animals/" + one.kit() + "/jaw", "jaw-from-photo");
        look(Role.AUDITOR, "/animals/" + one.kit(), "jaw-photo-story");
        look(Role.SAMPLER, "/jaws", "jaw-photo-queue");
        page.locator("figure summary").click();
        page.fill("figure [name=reason]", "shows a face");
        page.locator("figure button").click();
        page.waitForSelector(
                "figure.photo",
                new Page.WaitForSelectorOptions()
                        .setState(com.microsoft.playwright.options.WaitForSelectorState.DETACHED));
        as("sampler").get("/api/v1/animals/" + one.kit() + "/jaw-photos").then().body("items", hasSize(0));
    }

    private static byte[] photoOfAJaw() {
        BufferedImage image = new BufferedImage(1320, 500, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setColor(new java.awt.Color(0xE8, 0xE2, 0xD0 - new Random().nextInt(40)));
        graphics.fillRect(0, 0, 1320, 500);
        graphics.setColor(java.awt.Color.BLACK);
        graphics.scale(2, 2);
        JawDrawings.find("jaw-side").orElseThrow().paint(graphics);
        graphics.dispose();
        return PhotoFixture.file(image, "jpeg");
    }
}
