package org.dentary.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.kit.KitFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.story.dossier.DossierFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Custody in the browser: the story of a specimen, a box filled by scanner, a hand-over between two people. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CustodyBrowserTest extends Browser {
    @Inject
    SeasonFixture season;

    @Inject
    DossierFixture tissue;

    @Inject
    KitFixture kits;

    @BeforeEach
    void aSeason() {
        season.ensure();
    }

    @Test
    void aSpecimensStoryIsReadable() {
        String code = tissue.aNodeWithAStory();
        look(Role.COORDINATOR, "/specimens/" + code + "/custody", "custody-chain");
        Page page = signedIn(PHONE, Role.AUDITOR);
        page.navigate("/specimens/" + code + "/custody");
        assertTrue(page.textContent("#now").contains("Now with Test courier"), page.textContent("#now"));
        String wrong = page.textContent("main .fault");
        assertTrue(wrong.contains("tamper seal TS 0042 was expected, TS 0043 was found"), wrong);
        assertFalse(page.isVisible(".hash >> nth=0"), "hashes are folded away");
        page.click("summary >> nth=0");
        assertTrue(page.isVisible(".hash >> nth=0"));
        assertEquals(1, page.querySelectorAll("svg.signature").size());
        assertTrue(page.textContent(".timeline").matches("(?s).* C[SD]T.*"), "times are local, with their zone");
        assertFalse(page.textContent("main").matches("(?s).*\\d{4}-\\d\\d-\\d\\dT.*"), "no raw instant");
    }

    @Test
    void aBoxIsOpenedFilledAndEmptiedByScanner() {
        String box = kits.aBlock(1, Part.BOX).labels().get(0).code();
        String inner = kits.aBlock(1, Part.BOX).labels().get(0).code();
        String code = tissue.aNode();
        tissue.put("sampler", "/boxes/" + inner, "{\"place\":\"T_STATION_1\"}").statusCode(201);
        Page page = page(PHONE);
        signIn(page, "sampler", SeasonFixture.PASSWORD);
        page.fill("#scan", box);
        scan(page, "");
        assertTrue(page.url().endsWith("/boxes/" + box), page.url());
        page.fill("#place", SeasonFixture.STATION);
        page.waitForNavigation(() -> page.click("button.main"));
        until(page, "document.activeElement.id === 'content'");
        scan(page, "]C0" + code);
        assertTrue(page.textContent(".done").contains("is in the box"), page.textContent("main"));
        scan(page, inner);
        scan(page, box);
        assertTrue(page.textContent("main .fault").contains("cannot lie in itself"));
        shoot(page, "box-refused-390");
        String contents = page.textContent("#inside ~ .scroll");
        assertTrue(contents.contains(grouped(code)) && contents.contains(grouped(inner)), contents);
        page.click("text=Take out instead");
        until(page, "document.activeElement.id === 'content'");
        scan(page, code);
        assertTrue(page.textContent(".done").contains("taken out"), page.textContent("main"));
        scan(page, code);
        assertTrue(page.textContent("main .fault").contains("does not lie in this box"));
        assertFalse(page.textContent("#inside ~ .scroll").contains(grouped(code)));
        String moved = page.textContent("#moved ~ .scroll");
        assertTrue(moved.contains("Put in") && moved.contains("Taken out") && moved.contains("Test sampler"), moved);
        look(Role.COORDINATOR, "/boxes/" + box, "box");
        look(Role.AUDITOR, "/boxes/" + kits.aBlock(1, Part.BOX).labels().get(0).code(), "box-unopened");
    }

    @Test
    void anAuditSampleIsDrawnOnAPage() {
        tissue.aNodeWithAStory();
        Page page = signedIn(DESK, Role.AUDITOR);
        page.navigate("/ledger/audit-sample");
        page.selectOption("#season", SeasonFixture.EARLIER_SEASON);
        page.fill("#size", "5");
        page.waitForNavigation(() -> page.click("button.main"));
        assertTrue(page.url().matches(".*seed=[0-9a-f]{12}"), page.url());
        look(Role.AUDITOR, "/ledger/audit-sample?season=T2025&size=5&seed=autumn-7", "audit-sample");
    }

    private static String grouped(String code) {
        return code.substring(0, 4) + "-" + code.substring(4, 8) + "-" + code.substring(8);
    }
}
