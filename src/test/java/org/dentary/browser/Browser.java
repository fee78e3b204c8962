package org.dentary.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.deque.html.axecore.args.AxeRunOptions;
import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.ResultType;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.PlaywrightException;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.ColorScheme;
import io.quarkus.test.common.http.TestHTTPResource;
import jakarta.inject.Inject;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;

/**
 * A browser test's hands and eyes: chromium on the running service. The subclass carries {@code @QuarkusTest} and
 * {@code @QuarkusTestResource(DatabaseTestResource.class)}. Each test gets fresh contexts, so nobody is signed in at
 * first; they are closed after it.
 */
public abstract class Browser {
    public static final int PHONE = 390;
    public static final int DESK = 1280;
    /** Milliseconds for what a page does at once; a busy machine takes some of them. */
    private static final double PATIENCE = 60_000;

    private static final String PASSWORD = "for the browser only";
    private static final List<String> ARGUMENTS = List.of(
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync");

    private static Playwright playwright;
    private static com.microsoft.playwright.Browser chromium;

    @TestHTTPResource
    URI root;

    @Inject
    AccountService accounts;

    private final List<BrowserContext> contexts = new ArrayList<>();
    private final Map<String, Page> lookers = new HashMap<>();
    private final List<String> blocked = new ArrayList<>();

    @BeforeAll
    static void launch() {
        PlaywrightAssertions.setDefaultAssertionTimeout(PATIENCE);
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        chromium = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(Path.of("/usr/bin/chromium"))
                        .setArgs(ARGUMENTS));
    }

    @AfterAll
    static void quit() {
        playwright.close();
    }

    @AfterEach
    void closeContexts() {
        contexts.forEach(BrowserContext::close);
        contexts.clear();
        lookers.clear();
        assertEquals(List.of(), blocked, "nothing on a page may break the content security policy");
    }

    /** A fresh page, nobody signed in, of this width in light colors. */
    protected Page page(int width) {
        return page(width, ColorScheme.LIGHT);
    }

    /** A fresh page, nobody signed in. */
    protected Page page(int width, ColorScheme colors) {
        BrowserContext context = chromium.newContext(new com.microsoft.playwright.Browser.NewContextOptions()
                .setBaseURL(root.toString())
                .setViewportSize(width, width == PHONE ? 844 : 900)
                .setColorScheme(colors)
                .setLocale("en-US"));
        context.setDefaultTimeout(PATIENCE);
        contexts.add(context);
        context.onConsoleMessage(message -> {
            if (message.text().contains("Content Security Policy")) {
                blocked.add(message.page().url() + " " + message.text());
            }
        });
        return context.newPage();
    }

    /** A page on which a new or known account of this role has signed in through the form; it serves all stations. */
    protected Page signedIn(int width, Role role) {
        return signedIn(width, ColorScheme.LIGHT, role);
    }

    /** The same in other colors. */
    protected Page signedIn(int width, ColorScheme colors, Role role) {
        String name = "browser-" + role.name().toLowerCase(java.util.Locale.ROOT);
        accounts.put(name, null, role, List.of("*"), PASSWORD);
        Page page = page(width, colors);
        signIn(page, name, PASSWORD);
        return page;
    }

    /** Signs in by keyboard alone. */
    protected static void signIn(Page page, String name, String password) {
        page.navigate("/sign-in");
        // A busy machine gives the field its focus only after the page has loaded.
        until(page, "document.activeElement.id === 'username'");
        page.keyboard().type(name);
        page.keyboard().press("Tab");
        page.keyboard().type(password);
        page.keyboard().press("Enter");
        page.waitForURL(url -> !url.contains("/sign-in"));
    }

    /**
     * Waits until an expression is true on the page. Asked from outside: the page's own policy forbids the evaluation that
     * waiting inside it would need.
     */
    protected static void until(Page page, String expression) {
        for (int attempt = 0; attempt < 300; attempt++) {
            try {
                if (Boolean.TRUE.equals(page.evaluate(expression))) {
                    return;
                }
            } catch (PlaywrightException goesOn) {
                // The page changed under the question; the next one is asked of the new page.
            }
            page.waitForTimeout(100);
        }
        throw new AssertionError(page.url() + ": never true: " + expression);
    }

    /** What a hand scanner does: types fast wherever the cursor is, then Enter; waits for the page that follows. */
    protected static void scan(Page page, String text) {
        page.waitForNavigation(() -> {
            page.keyboard().type(text);
            page.keyboard().press("Enter");
        });
    }

    /** Fails with every fault that axe-core names on the page as it stands. */
    protected static void assertAccessible(Page page) {
        assertAccessible(page, axe(page));
    }

    /** The same of what other colors can change; the rest of the page must have been checked before they changed. */
    private static void assertColorsAccessible(Page page) {
        assertAccessible(page, axe(page).withRules(List.of("color-contrast", "link-in-text-block")));
    }

    /** axe-core of violations alone: to describe everything that passed takes longer than to check it. */
    private static AxeBuilder axe(Page page) {
        AxeRunOptions violationsOnly = new AxeRunOptions();
        violationsOnly.setResultTypes(List.of(ResultType.Violations.getKey()));
        return new AxeBuilder(page).options(violationsOnly).setLegacyMode(true);
    }

    private static void assertAccessible(Page page, AxeBuilder axe) {
        List<String> faults = axe.analyze().getViolations().stream()
                .map(rule -> rule.getId() + ": "
                        + rule.getNodes().stream()
                                .map(node -> node.getHtml() + " " + node.getFailureSummary())
                                .collect(Collectors.joining(" | ")))
                .toList();
        assertEquals(List.of(), faults, page.url());
    }

    /** Fails where the page is wider than the window, so that it would have to be moved sideways to be read. */
    protected static void assertNoSidewaysScroll(Page page) {
        Object overflow = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        assertEquals(0, ((Number) overflow).intValue(), page.url() + " is wider than the window");
    }

    /** Fails naming every control on the page that is lower than 48 pixels, links in running text left out. */
    protected static void assertTargetsFitGloves(Page page) {
        Object small = page.evaluate("""
                [...document.querySelectorAll("button, .button, select, summary, .rail a, .tiles a, .band a, .foot a,"
                    + " input:not([type=hidden], [type=checkbox], [type=radio]), label:has(> input)")]
                  .filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 47.5)
                  .map(e => e.outerHTML.slice(0, 120))
                """);
        assertEquals(List.of(), small, page.url());
    }

    /** Keeps a picture of the page and holds it to what every page must be: accessible, as wide as its screen, and on a phone fit for gloves. */
    protected static void look(Page page, String name, int width) {
        shoot(page, name);
        assertAccessible(page);
        assertNoSidewaysScroll(page);
        if (width == PHONE) {
            assertTargetsFitGloves(page);
        }
    }

    /** Keeps the whole page as {@code target/screenshots/<name>.png}, to be looked at. */
    protected static void shoot(Page page, String name) {
        page.screenshot(new Page.ScreenshotOptions()
                .setFullPage(true)
                .setPath(Path.of("target", "screenshots", name + ".png")));
    }

    /** Opens a path as a role at both widths in light and dark, checks each as a whole, and keeps four screenshots. */
    protected void look(Role role, String path, String name) {
        for (int width : new int[] {PHONE, DESK}) {
            Page page = lookers.computeIfAbsent(
                    role + " " + width, key -> role == null ? page(width) : signedIn(width, role));
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
            page.navigate(path);
            shoot(page, name + "-" + width + "-light");
            assertAccessible(page);
            assertNoSidewaysScroll(page);
            if (width == PHONE) {
                assertTargetsFitGloves(page);
            }
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
            shoot(page, name + "-" + width + "-dark");
            assertColorsAccessible(page);
        }
    }
}
