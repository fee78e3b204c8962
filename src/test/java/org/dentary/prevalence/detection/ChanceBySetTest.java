package org.dentary.prevalence.detection;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.List;
import org.dentary.SeasonFixture;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.truth.TruthFixture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The plan may name a set of test performance instead of a sensitivity of its own. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ChanceBySetTest {
    @Inject
    ChanceFixture plan;

    @Inject
    LineFixture lines;

    @Inject
    TruthFixture truths;

    private String unit;
    private String season;

    @BeforeEach
    void aUnitWithAHundredTested() {
        unit = plan.unit();
        season = lines.season();
        lines.add(season, 100, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(unit));
    }

    @AfterEach
    void leaveNothingBehind() {
        plan.set(PlanSetting.TEST_PERFORMANCE_SET, "", unit);
    }

    @Test
    void itsSensitivityCountsAsIfStatedAndItsCitationStandsBesideIt() {
        plan.set(PlanSetting.TEST_SENSITIVITY, "0.92", unit);
        JsonPath stated = asked("").statusCode(200).extract().jsonPath();
        plan.set(PlanSetting.TEST_SENSITIVITY, "0.5", unit);
        String set = truths.studied(138, 150, 600, 600);
        plan.set(PlanSetting.TEST_PERFORMANCE_SET, set, unit);
        JsonPath named = asked("").statusCode(200).extract().jsonPath();
        for (String figure : List.of("probability", "upperLimit", "target", "more", "assumptions.sensitivity")) {
            assertEquals(stated.<Object>get("units[0]." + figure), named.<Object>get("units[0]." + figure), figure);
        }
        assertEquals(
                "set " + set + ", Nobody 2026, table 1; figures read there on Jan 2, 2026",
                named.getString("units[0].assumptions.sensitivitySource"));
    }

    @Test
    void aSetThatDoesNotFitIsRefusedAsForTruePrevalence() {
        plan.set(PlanSetting.TEST_PERFORMANCE_SET, truths.imported("RELATIVE", "0.983,0.999,,,,"), unit);
        refused("", "RELATIVE_SENSITIVITY", "says nothing of infected deer that both miss");
        plan.set(PlanSetting.TEST_PERFORMANCE_SET, "NO_SUCH", unit);
        refused("", "PERFORMANCE_UNKNOWN", "the plan's setting TEST_PERFORMANCE_SET: 'NO_SUCH' is no set");
        plan.set(PlanSetting.TEST_PERFORMANCE_SET, truths.stated("0.9", "1"), unit);
        refused(
                "&species=" + SeasonFixture.SPECIES_WITHOUT_KEY,
                "PERFORMANCE_OF_ANOTHER_SPECIES",
                "is of WHITE_TAILED_DEER");
    }

    private void refused(String more, String rule, String words) {
        asked(more)
                .statusCode(422)
                .body("code", equalTo(rule))
                .body("errors[0].field", equalTo("TEST_PERFORMANCE_SET"))
                .body("detail", containsString(words));
    }

    private ValidatableResponse asked(String more) {
        return given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .get("/api/v1/chance-of-detection?season=" + season + "&unit=" + unit + more)
                .then();
    }
}
