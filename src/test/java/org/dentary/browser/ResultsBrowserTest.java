package org.dentary.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.dentary.intake.IntakeFixture.as;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A laboratory's file and a suspect on the pages, at a phone's width and at a desk. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ResultsBrowserTest extends Browser {
    @Inject
    SeasonFixture season;

    @Inject
    IntakeFixture intake;

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void aFileIsPostedWithoutItsFaultyLine(int width) {
        season.ensure();
        Deer deer = sent();
        Page page = signedIn(width, Role.LIAISON);
        page.navigate("/results");
        page.selectOption("#laboratory", "T_LAB");
        page.setInputFiles("#file", new FilePayload("november.csv", "text/csv", file(deer)));
        page.click("text=Look it through");
        look(page, "results-preview-" + width, width);
        page.check("[name=leaveOutFaulty]");
        page.click("text=Post the findings");
        assertThat(page.locator(".done")).hasText("Posted: 1 line.");
        page.navigate("/results");
        look(page, "results-" + width, width);
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

    private Deer sent() {
        Deer deer = intake.aDeer();
        intake.take(deer, intake.facts());
        String code = deer.label(Part.NODE_LEFT);
        intake.put("liaison", "/animals/" + deer.kit() + "/specimens/" + code, intake.node(deer))
                .statusCode(201);
        String submission = "/submissions/" + UUID.randomUUID();
        intake.put("liaison", submission, "{\"laboratory\":\"T_LAB\"}").statusCode(201);
        intake.put("liaison", submission + "/specimens/" + code, "{\"packedAt\":\"2025-11-15T08:00:00-06:00\"}")
                .statusCode(201);
        as("liaison")
                .contentType("application/json")
                .body("{\"occurredAt\":\"2025-11-15T09:00:00-06:00\",\"carrier\":\"T_COURIER\",\"waybill\":\"W-1\","
                        + "\"reason\":\"written down on paper\"}")
                .post("/api/v1" + submission + "/dispatch")
                .then()
                .statusCode(200);
        return deer;
    }

    private static void look(Page page, String name, int width) {
        shoot(page, name);
        assertAccessible(page);
        assertNoSidewaysScroll(page);
        if (width == PHONE) {
            assertTargetsFitGloves(page);
        }
    }
}
