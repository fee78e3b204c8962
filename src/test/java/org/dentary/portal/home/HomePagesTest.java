package org.dentary.portal.home;

import static io.restassured.RestAssured.given;
import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class HomePagesTest {
    @Inject
    SeasonFixture season;

    @Inject
    IntakeFixture intake;

    @Inject
    org.dentary.prevalence.detection.ChanceFixture chances;

    @BeforeEach
    void season() {
        season.ensure();
    }

    @ParameterizedTest
    @CsvSource({
        "sampler, Take in a deer, to read",
        "liaison, Pack a submission, overdue",
        "epidemiologist, Prevalence, pending",
        "coordinator, Set up the season, to release",
        "notifier, A caller without a stub, to tell",
        "auditor, Look up an animal, open discrepanc",
        "device, Take in a deer, you hold"
    })
    void everyRoleFindsItsOwnWorkAtHome(String account, String deed, String tile) {
        as(account)
                .accept("text/html")
                .get("/")
                .then()
                .statusCode(200)
                .header("Cache-Control", "private, no-store")
                .body(containsString(deed))
                .body(containsString(tile));
    }

    @Test
    void aSamplerClosesTheDayAndSeesWhatBecameOfTheirTissue() {
        as("sampler")
                .accept("text/html")
                .get("/")
                .then()
                .body(containsString("href=\"/day\""), containsString("href=\"/unsuitable-tissue?season="));
    }

    @Test
    void aRefusalKeepsTheWayOn() {
        as("auditor")
                .accept("text/html")
                .get("/custody")
                .then()
                .statusCode(403)
                .body(containsString("<a href=\"/ledger\">Ledger</a>"))
                .body(containsString("href=\"/problems/NOT_ALLOWED\""));
    }

    @Test
    void whoTakesInAnimalsIsToldWhatToTakeNext() {
        String unit = chances.unit();
        chances.first(unit);
        for (String account : java.util.List.of("sampler", "coordinator")) {
            as(account)
                    .accept("text/html")
                    .get("/")
                    .then()
                    .body(containsString("What to take next"))
                    .body(containsString("Chance unit " + unit))
                    .body(containsString("314 more animals (hunter harvest)"))
                    .body(containsString("As of "))
                    .body(containsString("/api/v1/take-next.csv?season=T2026"));
        }
        as("liaison").accept("text/html").get("/").then().body(not(containsString("What to take next")));
        // a plan that the figures cannot be had from leaves the list out and home standing
        chances.set(org.dentary.plan.setting.PlanSetting.TEST_SENSITIVITY_MEANS, "RELATIVE", unit);
        as("sampler")
                .accept("text/html")
                .get("/")
                .then()
                .statusCode(200)
                .body(not(containsString("What to take next")));
        chances.set(org.dentary.plan.setting.PlanSetting.TEST_SENSITIVITY_MEANS, "ANIMAL_LEVEL", unit);
    }

    @Test
    void aJawThatWaitsIsCountedAndOneThatWasReadIsNot() {
        int before = jaws();
        IntakeFixture.Deer waiting = intake.aDeer();
        intake.take(waiting, intake.facts());
        org.junit.jupiter.api.Assertions.assertEquals(before + 1, jaws());
        UUID reading = UUID.randomUUID();
        intake.put("sampler", "/animals/" + waiting.kit() + "/jaw-readings/" + reading, intake.yearling(reading))
                .statusCode(201);
        org.junit.jupiter.api.Assertions.assertEquals(before, jaws());
    }

    @Test
    void noRoleWithoutTheRightSeesADetectionThatIsNotReleased() {
        for (String account : new String[] {"sampler", "epidemiologist", "liaison"}) {
            as(account).accept("text/html").get("/").then().body(not(containsString("to release")));
        }
    }

    @Test
    void aProblemsTypeIsAPageThatExplainsIt() {
        String type =
                as("sampler").get("/api/v1/codes/nonsense").then().extract().path("type");
        given().accept("text/html")
                .get(type)
                .then()
                .statusCode(200)
                .body(containsString("NOT_A_CODE"))
                .body(containsString("scan the label again"));
        given().accept("text/html")
                .get("/problems")
                .then()
                .statusCode(200)
                .body(
                        containsString("STALE_VERSION"),
                        containsString("<h2 id=\"kit\">Kits and labels</h2>"),
                        containsString("href=\"/problems.csv\""));
        given().accept("text/csv")
                .get("/problems.csv")
                .then()
                .statusCode(200)
                .contentType("text/csv")
                .body(
                        containsString("room,code,meaning,remedy\r\n"),
                        containsString("\r\nkit,LABEL_VOID,The label was taken out of use."));
        given().accept("text/html")
                .get("/problems/SOME_OTHER")
                .then()
                .statusCode(404)
                .body(containsString("No such problem"));
        given().accept("text/html").get("/problems/%3Cb%3E").then().statusCode(404);
    }

    private static int jaws() {
        String page = as("sampler").accept("text/html").get("/").asString();
        java.util.regex.Matcher count = java.util.regex.Pattern.compile(
                        "<span class=\"num\">(\\d+)</span><span class=\"words\">jaws? to read")
                .matcher(page);
        org.junit.jupiter.api.Assertions.assertTrue(count.find(), page);
        return Integer.parseInt(count.group(1));
    }
}
