package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.story.Words;
import org.junit.jupiter.api.Test;

/**
 * The main job on the pages: coordinator, sampler, liaison, coordinator and epidemiologist carry two deer from a box of
 * labels to prevalence with keyboard and scanner alone. Only the file dialog is the browser's own.
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class WholePathBrowserTest extends Browser {
    private static final ZoneId ZONE = ZoneId.of("America/Chicago");

    @Inject
    SeasonFixture season;

    @Inject
    Clock clock;

    private final String mark =
            "W" + UUID.randomUUID().toString().substring(0, 6).toUpperCase(java.util.Locale.ROOT);

    @Test
    void aSeasonIsCarriedFromLabelsToPrevalenceByKeyboardAndScanner() {
        season.ensure();
        Page coordinator = as("coordinator", DESK);
        setUp(coordinator, "management-units", "code,name,region\n" + mark + ",Unit " + mark + ",T_NORTH\n");
        setUp(
                coordinator,
                "stations",
                "code,name,unit,time_zone\n" + mark + "_S,Station " + mark + "," + mark + ",America/Chicago\n");
        List<String> labels = issueKits(coordinator);
        List<String> nodes = labels.stream()
                .filter(code -> part(code) == part(labels.get(1)))
                .toList();

        Page sampler = as("sampler", PHONE);
        takeIn(sampler, labels.get(0), "MALE", nodes.get(0));
        takeIn(sampler, nodes.get(1), "FEMALE", nodes.get(1));
        offer(sampler, nodes);

        Page liaison = as("liaison", DESK);
        accept(liaison, nodes);
        send(liaison, "Test", "Surveillance", nodes, false);
        countIn(liaison, nodes);
        report(liaison, nodes);
        prevalence(as("epidemiologist", DESK), "1", "0");

        send(liaison, "Confirming", "Confirmation", nodes.subList(1, 2), true);
        confirm(liaison, nodes.get(1));
        release(coordinator, nodes.get(1));
        prevalence(as("epidemiologist", PHONE), "2", "1");
    }

    private Page as(String account, int width) {
        Page page = page(width);
        signIn(page, account, SeasonFixture.PASSWORD);
        return page;
    }

    private void setUp(Page page, String list, String file) {
        page.navigate("/season/lists/" + list);
        page.setInputFiles("#file", new FilePayload(list + ".csv", "text/csv", file.getBytes(StandardCharsets.UTF_8)));
        Keys keys = new Keys(page);
        keys.press("Look it through");
        keys.press("Post");
        assertThat(page.locator(".done")).containsText("1 added");
    }

    /** Two kits with the labels that the page proposes; codes in the order of the page: jaw, node, jaw, node. */
    private List<String> issueKits(Page page) {
        page.navigate("/kits/issue");
        Keys keys = new Keys(page);
        keys.pick("#season", "Test season 2026");
        keys.pick("#station", "Station " + mark);
        keys.fill("#kits", "2");
        keys.press("Issue the block");
        shoot(page, "path-block");
        String block = page.url().replaceAll("[?#].*", "").replaceAll(".*/", "");
        String answer = page.request().get("/api/v1/kit-blocks/" + block).text();
        Matcher label = Pattern.compile("\"part\":\"(\\w+)\",\"code\":\"([0-9A-Z]{10})\"")
                .matcher(answer);
        List<String> codes = label.results()
                .filter(found -> found.group(1).equals("JAW") || found.group(1).equals("NODE_LEFT"))
                .map(found -> found.group(2))
                .toList();
        assertEquals(4, codes.size(), answer);
        return codes;
    }

    private void takeIn(Page page, String scanned, String sex, String node) {
        page.navigate("/intake");
        scan(page, scanned);
        Keys keys = new Keys(page);
        keys.choose("sex", sex);
        keys.day("#diedOn", today());
        keys.pick("#managementUnit", "Unit " + mark);
        keys.pick("#station", "Station " + mark);
        keys.choose("jawStatus", "READ");
        keys.choose("jaw.rowSeen", "WHOLE");
        keys.choose("jaw.cheekTeeth", "6");
        keys.choose("jaw.thirdTooth.cusps", "2");
        keys.choose("jaw.thirdTooth.eruption", "FULL");
        keys.choose("jaw.thirdTooth.dentine", "DEFINED");
        keys.choose("jaw.sixthTooth.eruption", "FULL");
        keys.choose("jaw.sixthTooth.dentine", "DEFINED");
        keys.scanAll("#specimens", List.of(node));
        keys.press("Save, next deer");
        shoot(page, "path-taken-" + sex);
        assertThat(page.locator("main")).containsText("Adult");
    }

    private void offer(Page page, List<String> nodes) {
        page.navigate("/custody");
        Keys keys = new Keys(page);
        keys.scanAll("#codes", nodes);
        keys.fill("#to", "liaison");
        keys.press("Offer it now");
        shoot(page, "path-offered");
    }

    private void accept(Page page, List<String> nodes) {
        page.navigate("/custody");
        String field =
                page.locator("form[action$='/acceptance'] textarea").last().getAttribute("id");
        Keys keys = new Keys(page);
        keys.scanAll("#" + field, nodes);
        keys.press("Take over what I counted");
        shoot(page, "path-accepted");
        for (String node : nodes) {
            assertThat(page.locator("main")).containsText(Words.asLabel(node));
        }
    }

    private void send(Page page, String laboratory, String purpose, List<String> nodes, boolean agreed) {
        page.navigate("/submissions");
        Keys keys = new Keys(page);
        keys.pick("#laboratory", laboratory);
        keys.pick("#purpose", purpose);
        keys.press("Begin packing");
        for (String node : nodes) {
            keys.fill("#code", node);
            if (agreed) {
                keys.fill("#overrideReason", "agreed with the laboratory");
            }
            page.waitForNavigation(() -> page.keyboard().press("Enter"));
            assertThat(page.locator("[role=status]")).containsText("Packed: " + Words.asLabel(node));
        }
        keys.fill("#carrier", "T_COURIER");
        keys.fill("#waybill", mark);
        keys.press("It has left now");
        assertThat(page.locator("h1 + p")).containsText("Dispatched");
    }

    private void countIn(Page page, List<String> nodes) {
        Keys keys = new Keys(page);
        keys.scanAll("#codes", nodes);
        keys.press("Count in");
        assertThat(page.locator("h1 + p")).containsText("2 received, 0 missing");
        shoot(page, "path-counted-in");
    }

    private void report(Page page, List<String> nodes) {
        String file = "specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on\r\n";
        file += nodes.get(0) + "," + mark + ",T_SCREEN,SCREENING,NOT_DETECTED," + today() + "," + today() + "\r\n";
        file += nodes.get(1) + "," + mark + ",T_SCREEN,SCREENING,SUSPECT," + today() + "," + today() + "\r\n";
        page.navigate("/results");
        Keys keys = new Keys(page);
        keys.pick("#laboratory", "Test");
        page.setInputFiles("#file", new FilePayload("report.csv", "text/csv", file.getBytes(StandardCharsets.UTF_8)));
        keys.press("Look it through");
        keys.press("Post the findings");
        assertThat(page.locator(".done")).containsText("Posted: 2 lines.");
    }

    private void confirm(Page page, String node) {
        page.navigate("/results/findings/new");
        Keys keys = new Keys(page);
        keys.fill("#specimens", node);
        keys.pick("#laboratory", "Confirming");
        keys.fill("#accession", mark + "C");
        keys.pick("#method", "Confirmatory");
        keys.pick("#stage", "Confirmatory");
        keys.pick("#finding", "Detected");
        keys.pick("#status", "Final");
        keys.day("#testedOn", today());
        keys.day("#reportedOn", today());
        keys.press("Record the finding");
        assertThat(page.locator(".done")).containsText("Recorded");
        shoot(page, "path-confirmed");
    }

    private void release(Page page, String node) {
        String kit = node.substring(0, 8);
        page.navigate("/results/release/" + kit);
        new Keys(page).press("Release as detected");
        assertThat(page.locator(".done")).containsText("Released as detected");
    }

    private void prevalence(Page page, String counted, String detected) {
        page.navigate("/prevalence");
        Keys keys = new Keys(page);
        if (page.locator("details.fold").count() > 0) {
            page.locator("details.fold > summary").press("Enter");
        }
        keys.pick("#season", "Test season 2026");
        keys.pick("#unit", "Unit " + mark);
        keys.press("Show");
        assertThat(page.locator("tfoot td.num").first()).hasText(counted);
        assertThat(page.locator("tfoot td.num").nth(1)).hasText(detected);
        shoot(page, "path-prevalence-" + counted);
    }

    private LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), ZONE);
    }

    private static char part(String code) {
        return code.charAt(8);
    }
}
