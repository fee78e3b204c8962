package org.dentary.browser;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * Takes the pictures of {@code docs/} from a running demo; {@code deploy/pictures} starts one and calls this. Nothing is
 * checked here: the pages' own tests do that.
 */
@EnabledIfSystemProperty(named = "dentary.pictures-of", matches = "http://127\\.0\\.0\\.1:\\d+")
class GuidePictures {
    private record Picture(String name, String account, int width, String path) {}

    private static final List<Picture> PICTURES = List.of(
            new Picture("setting-up-a-season", "coordinator", Browser.DESK, "/season"),
            new Picture("labels", "coordinator", Browser.DESK, "/kits"),
            new Picture("taking-in-a-deer", "sampler", Browser.PHONE, "/intake"),
            new Picture("intake-without-signal", "sampler", Browser.PHONE, "/intake/without-signal"),
            new Picture("ageing", "sampler", Browser.PHONE, "/jaw-key"),
            new Picture("jaw-queue", "coordinator", Browser.DESK, "/jaws"),
            new Picture("custody", "sampler", Browser.PHONE, "/custody"),
            new Picture("sending-to-a-laboratory", "liaison", Browser.DESK, "/submissions"),
            new Picture("logging-results", "liaison", Browser.DESK, "/results"),
            new Picture("notifying", "notifier", Browser.DESK, "/notifications"),
            new Picture("prevalence", "epidemiologist", Browser.DESK, "/prevalence"),
            new Picture("prevalence-phone", "epidemiologist", Browser.PHONE, "/prevalence"),
            new Picture("chance-of-detection", "epidemiologist", Browser.DESK, "/chance-of-detection"),
            new Picture("true-prevalence", "epidemiologist", Browser.DESK, "/true-prevalence?performance=TOLVANE_2026"),
            new Picture("comparisons", "epidemiologist", Browser.DESK, "/prevalence/comparisons"),
            new Picture("ageing-error", "epidemiologist", Browser.DESK, "/prevalence/ageing-error"),
            new Picture("calculators", "epidemiologist", Browser.DESK, "/calculators/proportion?detected=3&tested=41"),
            new Picture("home-sampler", "sampler", Browser.PHONE, "/"),
            new Picture("home-coordinator", "coordinator", Browser.DESK, "/"));
    private static final int LONGEST = 1600;

    @Test
    void take() {
        String root = System.getProperty("dentary.pictures-of");
        try (Playwright playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")))) {
            com.microsoft.playwright.Browser chromium = playwright
                    .chromium()
                    .launch(new BrowserType.LaunchOptions()
                            .setExecutablePath(Path.of("/usr/bin/chromium"))
                            .setArgs(List.of("--no-sandbox", "--disable-gpu")));
            for (Picture picture : PICTURES) {
                BrowserContext context = chromium.newContext(new com.microsoft.playwright.Browser.NewContextOptions()
                        .setBaseURL(root)
                        .setViewportSize(picture.width(), 900)
                        .setLocale("en-US"));
                Page page = context.newPage();
                Browser.signIn(page, picture.account(), "demo");
                page.navigate(picture.path());
                int height = ((Number) page.evaluate("document.documentElement.scrollHeight")).intValue();
                page.setViewportSize(picture.width(), Math.min(height, LONGEST));
                page.screenshot(
                        new Page.ScreenshotOptions().setPath(Path.of("docs", "pictures", picture.name() + ".png")));
                context.close();
            }
        }
    }
}
