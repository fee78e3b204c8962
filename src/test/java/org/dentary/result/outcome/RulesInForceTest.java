package org.dentary.result.outcome;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.FindingsFixture;
import org.junit.jupiter.api.Test;

/** An outcome follows from its findings and the rules in force, whichever came first. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class RulesInForceTest {
    private static final String SETTINGS = "name,value,season,region,unit\n";

    @Inject
    FindingsFixture laboratory;

    @Inject
    IntakeFixture intake;

    @Test
    void otherRulesForAUnitJudgeItsAnimalsAnewAndKeepWhatStoodBefore() {
        String unit = laboratory.unitWithoutTheDisease();
        Deer here = laboratory.atTheLaboratory(unit);
        Deer elsewhere = laboratory.atTheLaboratory(laboratory.unitWithoutTheDisease());
        laboratory.finds(here, "SCREENING", "DETECTED", null).statusCode(201);
        laboratory.finds(elsewhere, "SCREENING", "DETECTED", null).statusCode(201);
        story(here)
                .body(outcome("derivedOutcome"), equalTo("SUSPECT"))
                .body(outcome("rules"), containsString("a screening detection waits for confirmation"))
                .body(outcome("explanation"), not(containsString("Edition")));

        posts("plan-settings", SETTINGS + "SCREENING_ALONE_DETECTS,true,,," + unit + "\n");

        story(here)
                .body(outcome("derivedOutcome"), equalTo("DETECTED"))
                .body(outcome("outcome"), equalTo("PENDING"))
                .body(outcome("rules"), containsString("a screening detection counts without confirmation"))
                .body(outcome("earlier[0].rules"), containsString("waits for confirmation"));
        story(elsewhere).body(outcome("derivedOutcome"), equalTo("SUSPECT"));
        as("sampler")
                .get("/api/v1/animals/" + here.kit())
                .then()
                .body(outcome("rules"), nullValue())
                .body(outcome("earlier"), nullValue());
        as("coordinator")
                .accept("text/html")
                .get("/animals/" + here.kit())
                .then()
                .body(containsString("By which rules, and what stood before"));

        posts("plan-settings", SETTINGS + "SCREENING_ALONE_DETECTS,false,,," + unit + "\n");
        story(here).body(outcome("derivedOutcome"), equalTo("SUSPECT"));
    }

    @Test
    void aUnitMovedIntoARegionWithOtherRulesIsJudgedByThem() {
        String region = "R" + UUID.randomUUID().toString().substring(0, 7).toUpperCase(java.util.Locale.ROOT);
        posts("regions", "code,name\n" + region + ",Region " + region + "\n");
        posts("plan-settings", SETTINGS + "SCREENING_ALONE_DETECTS,true,," + region + ",\n");
        String unit = laboratory.unitWithoutTheDisease();
        Deer deer = laboratory.atTheLaboratory(unit);
        laboratory.finds(deer, "SCREENING", "DETECTED", null).statusCode(201);
        story(deer).body(outcome("derivedOutcome"), equalTo("SUSPECT"));
        posts("management-units", "code,name,region\n" + unit + ",Unit " + unit + "," + region + "\n");
        story(deer).body(outcome("derivedOutcome"), equalTo("DETECTED"));
    }

    @Test
    void anAnimalCorrectedIntoAUnitWithOtherRulesIsJudgedByThem() {
        String strict = laboratory.unitWithoutTheDisease();
        String established = laboratory.unitWithoutTheDisease();
        posts("plan-settings", SETTINGS + "SCREENING_ALONE_DETECTS,true,,," + established + "\n");
        Deer deer = laboratory.atTheLaboratory(strict);
        laboratory.finds(deer, "SCREENING", "DETECTED", null).statusCode(201);
        story(deer).body(outcome("derivedOutcome"), equalTo("SUSPECT"));
        as("sampler")
                .contentType("application/json")
                .header("If-Match", "\"0\"")
                .body(intake.facts()
                        .put("managementUnit", established)
                        .put("reason", "the hunter showed it on the map"))
                .put("/api/v1/animals/" + deer.kit())
                .then()
                .statusCode(200);
        story(deer).body(outcome("derivedOutcome"), equalTo("DETECTED")).body(outcome("outcome"), equalTo("PENDING"));
    }

    @Test
    void tissueThatAMethodNoLongerAcceptsNoLongerCounts() {
        String method = "M" + UUID.randomUUID().toString().substring(0, 7).toUpperCase(java.util.Locale.ROOT);
        String header = "code,name,disease,accepted_tissues\n" + method + ",Method " + method + ",CWD,";
        posts("test-methods", header + "MEDIAL_RETROPHARYNGEAL_NODE OBEX\n");
        Deer deer = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        laboratory.finds(deer, "SCREENING", "NOT_DETECTED", null, method).statusCode(201);
        story(deer).body(outcome("derivedOutcome"), equalTo("NOT_DETECTED"));
        posts("test-methods", header + "OBEX\n");
        story(deer).body(outcome("derivedOutcome"), not(equalTo("NOT_DETECTED")));
        as("epidemiologist")
                .get("/api/v1/line-list?season=" + SeasonFixture.EARLIER_SEASON + "&disease=CWD&kit=" + deer.kit())
                .then()
                .body("items", hasSize(1))
                .body("items[0].outcome", not(equalTo("NOT_DETECTED")));
    }

    @Test
    void aDetectionThatTheRulesNoLongerBearIsToBeToldAgain() {
        String unit = laboratory.unitWithoutTheDisease();
        posts(
                "plan-settings",
                SETTINGS + "SCREENING_ALONE_DETECTS,true,,," + unit + "\nDISEASES_ESTABLISHED,CWD,,," + unit + "\n");
        Deer deer = laboratory.atTheLaboratory(unit);
        laboratory.finds(deer, "SCREENING", "DETECTED", null).statusCode(201);
        laboratory.releases(deer).statusCode(201);
        posts("plan-settings", SETTINGS + "SCREENING_ALONE_DETECTS,false,,," + unit + "\n");
        story(deer).body(outcome("derivedOutcome"), equalTo("SUSPECT")).body(outcome("outcome"), equalTo("PENDING"));
        as("notifier")
                .get("/api/v1/corrections?state=OPEN&limit=500")
                .then()
                .body("items.findAll { it.kit == '" + deer.kit() + "' }.cause", hasItem("RULES"));
    }

    private static String outcome(String field) {
        return "outcomes.find { it.disease == 'CWD' }." + field;
    }

    private static ValidatableResponse story(Deer deer) {
        return as("coordinator").get("/api/v1/animals/" + deer.kit()).then().statusCode(200);
    }

    /** Previews and posts a set-up file; one that changes how outcomes are derived says so before. */
    private static void posts(String list, String file) {
        String id = "/api/v1/set-up-imports/" + UUID.randomUUID();
        as("coordinator")
                .contentType("text/csv")
                .body(file)
                .put(id + "?list=" + list)
                .then()
                .statusCode(201)
                .body("problems", hasSize(0));
        as("coordinator").post(id + "/posting").then().statusCode(200);
    }
}
