package org.dentary.prevalence.detection;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Expected values: {@code src/test/resources/prevalence/chance.R}, R 4.2.2. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ChanceOfDetectionResourceTest {
    private static final ALine ADULT = ALine.of("ADULT", "MALE", "NOT_DETECTED");
    private static final ALine YEARLING = ALine.of("YEARLING", "FEMALE", "NOT_DETECTED");

    @Inject
    LineFixture lines;

    @Inject
    ChanceFixture plan;

    private static RequestSpecification as(String username) {
        return given().auth().preemptive().basic(username, SeasonFixture.PASSWORD);
    }

    private static String address(String season, String unit) {
        return "/api/v1/chance-of-detection?season=" + season + "&unit=" + unit;
    }

    private static JsonPath report(String address) {
        return as("epidemiologist")
                .get(address)
                .then()
                .statusCode(200)
                .header("Cache-Control", "private, no-store")
                .extract()
                .jsonPath();
    }

    @Test
    void countsAsPrevalenceDoesAndFollowsTheSeasons() {
        String unit = plan.unit();
        String first = lines.season();
        String second = lines.season();
        String third = lines.season();
        lines.add(first, 70, ADULT.in(unit));
        lines.add(first, 60, YEARLING.in(unit));
        lines.add(second, 75, ADULT.in(unit));
        lines.add(second, 75, YEARLING.in(unit));
        lines.add(third, 60, ADULT.in(unit));
        lines.add(third, 60, YEARLING.in(unit));
        // none of these is tested within the scope
        lines.add(third, 5, ADULT.in(unit).from("VEHICLE"));
        lines.add(third, 3, ADULT.in(unit).excluded("DUPLICATE"));
        lines.add(third, 2, ADULT.in(unit).without());
        lines.add(
                third,
                4,
                ALine.of("ADULT", "MALE", "PENDING").derived("DETECTED").in(unit));
        JsonPath report = report(address(third, unit));
        assertEquals(1, report.getList("units").size());
        assertEquals(120, report.getInt("units[0].tested"));
        assertEquals(0, report.getInt("units[0].detected"));
        assertEquals(4, report.getInt("units[0].pending"));
        assertEquals(314, report.getInt("units[0].target"));
        assertEquals(.681919104829, report.getDouble("units[0].probability"), 1e-6);
        assertEquals(.0259530537428, report.getDouble("units[0].upperLimit"), 1e-6);
        assertEquals(.956670506199, report.getDouble("units[0].probabilityBelow"), 1e-6);
        assertEquals(3, report.getList("units[0].seasons").size());
        assertEquals(194, report.getInt("units[0].more"));
        assertEquals(190, report.getInt("units[0].moreAfterPending"));
        assertEquals(190, report.getInt("takeNext[0].choices[0].more"));
        assertEquals(134, report.getInt("takenToCounted.find { it.step == 'TAKEN' }.animals"));
        assertEquals(120, report.getInt("takenToCounted.find { it.step == 'COUNTED' }.animals"));
        JsonPath prevalence = report("/api/v1/prevalence?season=" + third + "&unit=" + unit + "&by=sex");
        assertEquals(prevalence.getInt("total.counted"), report.getInt("tested"));
        // an unreleased detection is pending to everybody here
        assertFalse(as("epidemiologist").get(address(third, unit)).asString().contains("\"DETECTED\""));
    }

    @Test
    void aReleasedDetectionIsSaidNowAndInLaterSeasons() {
        String unit = plan.unit();
        String first = lines.season();
        String second = lines.season();
        lines.add(first, 39, ADULT.in(unit));
        lines.add(first, 1, ALine.of("ADULT", "MALE", "DETECTED").in(unit));
        lines.add(second, 50, YEARLING.in(unit));
        JsonPath now = report(address(first, unit));
        assertEquals("DETECTED", now.getString("units[0].state"));
        assertNull(now.get("units[0].probability"));
        assertTrue(now.getString("units[0].sentence").contains("Detected in 1 of 40 tested"));
        assertEquals(List.of(), now.getList("takeNext"));
        JsonPath later = report(address(second, unit));
        assertEquals("DETECTED_EARLIER", later.getString("units[0].state"));
        assertEquals(0, later.getDouble("units[0].probabilityBelow"));
    }

    @Test
    void anAnswerOnACutStaysByteForByteWithItsEarlierSeasons() {
        String unit = plan.unit();
        String first = lines.season();
        String second = lines.season();
        List<String> earlier = lines.add(first, 30, ADULT.in(unit));
        lines.add(second, 40, YEARLING.in(unit));
        UUID cut = UUID.randomUUID();
        as("epidemiologist")
                .contentType("application/json")
                .body("{\"season\":\"" + second + "\",\"name\":\"Chance\"}")
                .put("/api/v1/data-cuts/" + cut)
                .then()
                .statusCode(201);
        // after the cut: a detection in the season before, five more in this one
        lines.revise(earlier.subList(0, 1), "DETECTED");
        lines.add(second, 5, YEARLING.in(unit));
        String address = address(second, unit) + "&cut=" + cut;
        String json = as("epidemiologist").get(address).asString();
        JsonPath report = JsonPath.from(json);
        assertEquals(40, report.getInt("units[0].tested"));
        assertEquals("BELOW_TARGET", report.getString("units[0].state"));
        assertEquals(2, report.getList("units[0].seasons").size());
        assertEquals("Chance", report.getString("cut.name"));
        String csv = as("epidemiologist").accept("text/csv").get(address).asString();
        lines.add(second, 5, YEARLING.in(unit));
        assertEquals(json, as("auditor").get(address).asString());
        assertEquals(csv, as("auditor").accept("text/csv").get(address).asString());
        assertEquals("DETECTED_EARLIER", report(address(second, unit)).getString("units[0].state"));
    }

    @Test
    void theCsvHasOneLineAUnitWithAllAssumptions() {
        String unit = plan.unit();
        String season = lines.season();
        lines.add(season, 20, YEARLING.in(unit));
        plan.set(PlanSetting.HERD_SIZE, "400", unit);
        String csv = as("liaison")
                .get("/api/v1/chance-of-detection.csv?season=" + season + "&unit=" + unit)
                .then()
                .statusCode(200)
                .contentType(startsWith("text/csv"))
                .header("Content-Disposition", containsString("chance-of-detection-" + season + ".csv"))
                .extract()
                .asString();
        String[] rows = csv.split("\r\n");
        assertEquals(2, rows.length);
        assertTrue(rows[0].contains("designPrevalence") && rows[0].contains("introductionRisk"));
        assertTrue(rows[1].contains(",0.01,0.95,0.95,Invented 2026,400,4,"), rows[1]);
        as("liaison")
                .get("/api/v1/chance-of-detection-take-next.csv?season=" + season + "&unit=" + unit)
                .then()
                .statusCode(200)
                .body(containsString("202,ANY,MALE,HUNTER_HARVEST"));
    }

    @Test
    void weightsMissingForATestedClassAreAProblemThatSaysWhatToChange() {
        String unit = plan.unit();
        String season = lines.season();
        lines.add(season, 30, ADULT.in(unit));
        lines.add(season, 7, YEARLING.in(unit));
        plan.set(PlanSetting.RISK_WEIGHT_SET, "W_" + unit, unit);
        as("epidemiologist")
                .get(address(season, unit))
                .then()
                .statusCode(422)
                .contentType("application/problem+json")
                .body("errors[0].rule", equalTo("WEIGHT_SET_EMPTY"))
                .body("errors[0].message", containsString("risk-weights"));
        plan.weight("W_" + unit, "ADULT", "MALE", "HUNTER_HARVEST", 2.5);
        as("epidemiologist")
                .get(address(season, unit))
                .then()
                .statusCode(422)
                .body("errors[0].rule", equalTo("WEIGHT_MISSING"))
                .body(
                        "errors[0].message",
                        containsString("yearling, female, hunter harvest, no signs seen (7 tested)"));
        plan.weight("W_" + unit, "YEARLING", "FEMALE", "HUNTER_HARVEST", 1);
        JsonPath report = report(address(season, unit));
        assertEquals(82, report.getDouble("units[0].points.points"));
        assertEquals("REFERENCE_CLASS", report.getString("units[0].points.convention"));
        assertEquals(List.of("Invented for a test"), report.getList("units[0].points.citations"));
        assertEquals("ADULT", report.getString("takeNext[0].choices[0].ageClass"));
        plan.set(PlanSetting.RISK_WEIGHT_SET, "", unit);
    }

    @Test
    void aRelativeSensitivityIsRefused() {
        String unit = plan.unit();
        String season = lines.season();
        plan.set(PlanSetting.TEST_SENSITIVITY_MEANS, "RELATIVE", unit);
        as("epidemiologist")
                .get(address(season, unit))
                .then()
                .statusCode(422)
                .body("errors[0].rule", equalTo("RELATIVE_SENSITIVITY"))
                .body("errors[0].message", containsString("animal-level"));
        plan.set(PlanSetting.TEST_SENSITIVITY_MEANS, "ANIMAL_LEVEL", unit);
    }

    @ParameterizedTest
    @CsvSource({
        "by=sex, by, NOT_OF_THIS_REPORT",
        "outcome=DETECTED, outcome, NOT_OF_THIS_REPORT",
        "interval=WILSON, interval, NOT_OF_THIS_REPORT",
        "confidence=95, confidence, OUT_OF_RANGE",
        "altitude=9, altitude, NOT_A_COLUMN"
    })
    void aParameterThatDoesNotBelongIsNamed(String parameter, String field, String rule) {
        as("epidemiologist")
                .get(address(SeasonFixture.EARLIER_SEASON, SeasonFixture.UNIT) + "&" + parameter)
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo(field))
                .body("errors[0].rule", equalTo(rule));
    }

    @Test
    void aSeasonOrUnitThatIsNotSetUpIsNotFoundAndASeasonIsNeeded() {
        as("epidemiologist").get("/api/v1/chance-of-detection").then().statusCode(422);
        as("epidemiologist")
                .get(address("NO_SEASON", SeasonFixture.UNIT))
                .then()
                .statusCode(404);
        as("epidemiologist")
                .get(address(SeasonFixture.EARLIER_SEASON, "NO_UNIT"))
                .then()
                .statusCode(404);
    }

    @ParameterizedTest
    @CsvSource({
        "sampler, 403",
        "notifier, 403",
        "liaison, 200",
        "epidemiologist, 200",
        "coordinator, 200",
        "auditor, 200"
    })
    void rolesThatReadReportsReadIt(String account, int status) {
        plan.unit();
        as(account)
                .get(address(SeasonFixture.EARLIER_SEASON, SeasonFixture.SOUTHERN_UNIT))
                .then()
                .statusCode(status);
        as(account)
                .accept("text/html")
                .get("/chance-of-detection?season=T2025&unit=T_UNIT_3")
                .then()
                .statusCode(status);
    }

    @Test
    void stationsAreToldWhatToTakeNext() {
        String unit = plan.unit();
        String station = plan.station(unit);
        String season = lines.season();
        lines.add(season, 20, YEARLING.in(unit));
        as("sampler")
                .get("/api/v1/take-next?season=" + season)
                .then()
                .log()
                .ifValidationFails()
                .statusCode(200)
                .body("items.find { it.unit == '" + unit + "' }.choices[0].more", equalTo(294))
                .body("items.find { it.unit == '" + unit + "' }.stations[0].code", equalTo(station));
        // one who serves another station is not told of this unit
        as("sampler-two")
                .get("/api/v1/take-next?season=" + season)
                .then()
                .log()
                .ifValidationFails()
                .statusCode(200)
                .body("items.findAll { it.unit == '" + unit + "' }.size()", equalTo(0));
        as("sampler")
                .accept("text/csv")
                .get("/api/v1/take-next?season=" + season)
                .then()
                .log()
                .ifValidationFails()
                .statusCode(200)
                .body(containsString(unit));
        as("auditor").get("/api/v1/take-next?season=" + season).then().statusCode(403);
    }

    @Test
    void thePageShowsTableListAndReasons() {
        String unit = plan.unit();
        String season = lines.season();
        lines.add(season, 20, YEARLING.in(unit));
        as("coordinator")
                .accept("text/html")
                .get("/chance-of-detection?season=" + season + "&unit=" + unit)
                .then()
                .statusCode(200)
                .body(containsString("below target"))
                .body(containsString("294 more male animals"))
                .body(containsString("20 of 20 tested are female"))
                .body(containsString("Diefenbach"));
        as("coordinator")
                .accept("text/html")
                .get("/chance-of-detection?season=" + season + "&by=sex")
                .then()
                .statusCode(422)
                .body(containsString("leave it out"));
    }
}
