package org.dentary.browser;

import com.microsoft.playwright.Keyboard;
import com.microsoft.playwright.Page;

/** A person at the keyboard with a scanner beside it: no mouse, no touch, nothing set from outside the page. */
final class Keys {
    private static final int FARTHEST = 400;

    private final Page page;

    Keys(Page page) {
        this.page = page;
    }

    /** Goes on by Tab until that has the focus. */
    void to(String selector) {
        for (int step = 0; step < FARTHEST; step++) {
            if (has(selector)) {
                return;
            }
            page.keyboard().press("Tab");
        }
        throw new AssertionError(page.url() + ": the keyboard does not reach " + selector);
    }

    /** Types into a field; what stood there goes. */
    void fill(String selector, String text) {
        to(selector);
        page.keyboard().press("Control+A");
        page.keyboard().type(text);
        // A Tab at a scanner's speed is the scanner's and sends the form; people are slower.
        page.waitForTimeout(80);
    }

    /** Types a day, in the order that the browser's own language wants it. */
    void day(String selector, java.time.LocalDate day) {
        to(selector);
        page.keyboard().type("%02d%02d%04d".formatted(day.getMonthValue(), day.getDayOfMonth(), day.getYear()));
    }

    /** Chooses one of several by the arrow keys. */
    void choose(String name, String value) {
        to("input[name='" + name + "']");
        for (int step = 0; step < 20; step++) {
            if (has("input[value='" + value + "']")) {
                page.keyboard().press("Space");
                return;
            }
            page.keyboard().press("ArrowDown");
        }
        throw new AssertionError(page.url() + ": " + name + " has no " + value);
    }

    /** Chooses from a list by typing the beginning of its words. */
    void pick(String selector, String words) {
        to(selector);
        // At a scanner's speed it would be taken for a scan, which changes no choice; people are slower.
        page.keyboard().type(words, new Keyboard.TypeOptions().setDelay(60));
    }

    /** Presses the button that has these words and waits for the page that follows. */
    void press(String words) {
        String selector = "button";
        for (int step = 0; step < FARTHEST; step++) {
            if (has(selector)
                    && ((String) page.evaluate("document.activeElement.textContent"))
                            .strip()
                            .startsWith(words)) {
                page.waitForNavigation(() -> page.keyboard().press("Enter"));
                return;
            }
            page.keyboard().press("Tab");
        }
        throw new AssertionError(page.url() + ": the keyboard reaches no button \"" + words + "\"");
    }

    /** What a scanner does in a field that takes many codes. */
    void scanAll(String selector, Iterable<String> codes) {
        to(selector);
        for (String code : codes) {
            page.keyboard().type(code);
            page.keyboard().press("Enter");
        }
    }

    private boolean has(String selector) {
        return (Boolean) page.evaluate("s => document.activeElement.matches(s)", selector);
    }
}
