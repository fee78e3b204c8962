package org.dentary.prevalence;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture.ALine;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PrevalenceResourceTest {
    @Inject
    LineFixture lines;

    private static RequestSpecification as(String username) {
        return given().auth().preemptive().basic(username, SeasonFixture.PASSWORD);
    }

    private JsonPath report(String season, String more) {
        return as("epidemiologist")
                .get("/api/v1/prevalence?season=" + season + more)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    @Test
    void countsDetectedAmongCountedWithPublishedWilsonLimits() {
        String season = lines.season();
        lines.add(season, 81, ALine.of("ADULT", "MALE", "DETECTED"));
        lines.add(season, 182, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        lines.add(season, 20, ALine.of("YEARLING", "FEMALE", "NOT_DETECTED"));
        JsonPath report = report(season, "&by=ageClass,sex");
        Map<String, Object> adults = report.getMap("cells.find { it.ageClass == 'ADULT' && it.sex == 'MALE' }");
        assertEquals(263, adults.get("counted"));
        assertEquals(81, adults.get("detected"));
        // Newcombe 1998, Stat Med 17:857-872: 81/263, score limits .2553 and .3662.
        assertEquals(.2553, ((Number) adults.get("lower")).doubleValue(), 5e-5);
        assertEquals(.3662, ((Number) adults.get("upper")).doubleValue(), 5e-5);
        Map<String, Object> yearlings = report.getMap("cells.find { it.ageClass == 'YEARLING' && it.sex == 'FEMALE' }");
        // Same paper: 0/20, 0 to .1611.
        assertEquals(0.0, ((Number) yearlings.get("lower")).doubleValue());
        assertEquals(.1611, ((Number) yearlings.get("upper")).doubleValue(), 5e-5);
        Map<String, Object> fawns = report.getMap("cells.find { it.ageClass == 'FAWN' && it.sex == 'MALE' }");
        assertEquals(0, fawns.get("counted"));
        assertEquals(null, fawns.get("prevalence"));
        assertTrue(((List<?>) fawns.get("flags")).contains("NOT_SAMPLED"));
        assertEquals(12, report.getList("cells").size());
    }

    @Test
    void everyAnimalLeavesAtOneStepAndTheStepsAddUp() {
        String season = lines.season();
        ALine adult = ALine.of("ADULT", "FEMALE", "NOT_DETECTED");
        lines.add(season, 5, adult);
        lines.add(season, 1, ALine.of("ADULT", "FEMALE", "DETECTED"));
        lines.add(season, 2, adult.excluded("ENTERED_IN_ERROR"));
        lines.add(season, 3, adult.excluded("DUPLICATE"));
        lines.add(season, 1, adult.excluded("NOT_ATTRIBUTABLE"));
        lines.add(season, 4, adult.from("VEHICLE"));
        lines.add(season, 2, adult.without());
        lines.add(season, 1, ALine.of("ADULT", "FEMALE", "NOT_TESTED"));
        lines.add(season, 3, ALine.of("ADULT", "FEMALE", "UNSUITABLE"));
        lines.add(season, 1, ALine.of("ADULT", "FEMALE", "INCONCLUSIVE"));
        lines.add(season, 6, ALine.of("ADULT", "FEMALE", "PENDING").derived("SUSPECT"));
        JsonPath report = report(season, "&by=sex");
        Map<String, Integer> steps = Map.ofEntries(
                Map.entry("TAKEN", 29),
                Map.entry("ENTERED_IN_ERROR", 2),
                Map.entry("DUPLICATE", 3),
                Map.entry("NOT_ATTRIBUTABLE", 1),
                Map.entry("OUT_OF_SCOPE", 4),
                Map.entry("NO_SPECIMEN", 2),
                Map.entry("NOT_TESTED", 1),
                Map.entry("UNSUITABLE", 3),
                Map.entry("INCONCLUSIVE", 1),
                Map.entry("PENDING", 6),
                Map.entry("COUNTED", 6));
        steps.forEach((step, animals) -> assertEquals(
                animals, report.getInt("takenToCounted.find { it.step == '" + step + "' }.animals"), step));
        assertEquals(true, report.getBoolean("incomplete"));
        assertEquals(6, report.getInt("total.counted"));
        assertEquals(1, report.getInt("total.detected"));
        // Roadkill joins only when asked for, and then it is said.
        JsonPath both = report(season, "&by=sex&mortalitySource=HUNTER_HARVEST,VEHICLE");
        assertEquals(10, both.getInt("total.counted"));
        assertTrue(both.getList("warnings").toString().contains("mortality source"));
    }

    @Test
    void aReportOnACutIsTheSameByteForByteAndChangesAreNamed() {
        String season = lines.season();
        List<String> pending = lines.add(season, 7, ALine.of("ADULT", "MALE", "PENDING"));
        lines.add(season, 10, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        String first = cut(season, "Before");
        String address = "/api/v1/prevalence?season=" + season + "&cut=" + first;
        String json = as("epidemiologist")
                .get(address)
                .then()
                .statusCode(200)
                .extract()
                .asString();
        String csv = as("epidemiologist").accept("text/csv").get(address).asString();
        lines.revise(pending, "NOT_DETECTED");
        lines.add(season, 2, ALine.of("FAWN", "MALE", "NOT_DETECTED"));
        String second = cut(season, "After");
        assertEquals(json, as("epidemiologist").get(address).asString());
        assertEquals(csv, as("epidemiologist").accept("text/csv").get(address).asString());
        assertEquals(10, JsonPath.from(json).getInt("total.counted"));
        as("epidemiologist")
                .get("/api/v1/data-cuts/" + first + "/changes?to=" + second)
                .then()
                .statusCode(200)
                .body("counts.PENDING_RESOLVED", equalTo(7))
                .body("counts.LATE_INTAKE", equalTo(2))
                .body("summary", containsString("7 pending resolved"));
        String changes = as("epidemiologist")
                .get("/api/v1/data-cuts/" + first + "/changes.csv?to=" + second)
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertTrue(
                changes.contains(pending.get(0) + ",CWD,PENDING_RESOLVED,FINDING,outcome,PENDING,NOT_DETECTED"),
                changes);
    }

    private String cut(String season, String name) {
        String id = UUID.randomUUID().toString();
        String body = "{\"season\":\"" + season + "\",\"name\":\"" + name + "\"}";
        as("epidemiologist")
                .contentType("application/json")
                .body(body)
                .put("/api/v1/data-cuts/" + id)
                .then()
                .statusCode(201)
                .header("ETag", equalTo("\"0\""));
        as("epidemiologist")
                .contentType("application/json")
                .body(body)
                .put("/api/v1/data-cuts/" + id)
                .then()
                .statusCode(200);
        as("epidemiologist")
                .contentType("application/json")
                .body("{\"season\":\"" + season + "\",\"name\":\"Other\"}")
                .put("/api/v1/data-cuts/" + id)
                .then()
                .statusCode(409);
        return id;
    }

    @Test
    void theLineListPagesFiltersAndStreams() {
        String season = lines.season();
        lines.add(season, 5, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        lines.add(season, 3, ALine.of("FAWN", "FEMALE", "PENDING").derived("SUSPECT"));
        String link = as("liaison")
                .get("/api/v1/line-list?season=" + season + "&limit=6")
                .then()
                .statusCode(200)
                .body("items", hasSize(6))
                .body("items[0].managementUnit", equalTo(SeasonFixture.UNIT))
                .extract()
                .header("Link");
        String next = link.substring(1, link.indexOf('>'));
        as("liaison").urlEncodingEnabled(false).get(next).then().statusCode(200).body("items", hasSize(2));
        String csv = as("liaison")
                .accept("text/csv")
                .get("/api/v1/line-list?season=" + season + "&ageClass=FAWN")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertEquals(4, csv.split("\r\n").length);
        assertTrue(csv.startsWith("kit,season,disease,species,origin,sex,"));
        assertTrue(!csv.contains("SUSPECT"), "the embargo holds in the export");
        as("liaison")
                .get("/api/v1/line-list?shoesize=44")
                .then()
                .statusCode(422)
                .contentType("application/problem+json")
                .body("errors[0].field", equalTo("shoesize"));
    }

    @Test
    void wrongQuestionsSayWhatToChange() {
        String season = lines.season();
        as("epidemiologist").get("/api/v1/prevalence").then().statusCode(422).body("errors[0].field", is("season"));
        as("epidemiologist").get("/api/v1/prevalence?season=NO").then().statusCode(404);
        for (String wrong : List.of(
                "by=shoe", "interval=WALD", "confidence=95", "confidence=1e-17", "sex=BUCK", "cut=x", "origin=MARS")) {
            as("epidemiologist")
                    .get("/api/v1/prevalence?season=" + season + "&" + wrong)
                    .then()
                    .statusCode(422)
                    .body("errors[0].field", equalTo(wrong.split("=")[0]));
        }
        String other = lines.season();
        String cut = cut(other, "Other season");
        as("epidemiologist")
                .get("/api/v1/prevalence?season=" + season + "&cut=" + cut)
                .then()
                .statusCode(422)
                .body("code", equalTo("CUT_OF_ANOTHER_SEASON"));
        as("sampler").get("/api/v1/prevalence?season=" + season).then().statusCode(403);
        given().get("/api/v1/prevalence?season=" + season).then().statusCode(401);
    }

    @Test
    void thePagesShowTheTableThePictureAndTheSteps() {
        String season = lines.season();
        lines.add(season, 40, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        lines.add(season, 3, ALine.of("ADULT", "MALE", "DETECTED"));
        lines.add(season, 4, ALine.of("FAWN", "FEMALE", "PENDING"));
        as("epidemiologist")
                .accept("text/html")
                .get("/prevalence?season=" + season)
                .then()
                .statusCode(200)
                .body(containsString("not sampled"))
                .body(containsString("no result yet"))
                .body(containsString("<svg"))
                .body(containsString("From taken to counted"));
        as("epidemiologist")
                .accept("text/html")
                .get("/line-list?season=" + season)
                .then()
                .statusCode(200)
                .body(containsString("Hunter harvest"));
        as("epidemiologist")
                .accept("text/html")
                .get("/data-cuts?season=" + season)
                .then()
                .statusCode(200)
                .body(containsString("Make a cut"));
        as("epidemiologist")
                .get("/api/v1/prevalence.svg?season=" + season)
                .then()
                .statusCode(200)
                .contentType(startsWith("image/svg+xml"));
    }

    @Test
    void conditionsThatNoAnimalCanMeetAreRefusedWithWhatToChange() {
        String season = lines.season();
        String year = season.substring(1);
        impossible(
                season,
                "diedOnFrom=" + (Integer.parseInt(year) + 1) + "-01-01",
                "diedOnFrom",
                "which runs from " + year);
        impossible(
                season,
                "diedOnTo=" + (Integer.parseInt(year) - 1) + "-12-31",
                "diedOnTo",
                "change the days or the season");
        impossible(
                season, "unit=" + SeasonFixture.UNIT + "&region=UNKNOWN", "region", "Leave one of the two filters out");
        // What overlaps is none: a span that begins before the season, a unit in its own region.
        report(season, "&by=sex&diedOnFrom=" + (Integer.parseInt(year) - 1) + "-06-01");
    }

    @Test
    void aValueThatNoLineCanHaveIsRefusedInReportsAsInTheLineList() {
        String season = lines.season();
        for (String filter : List.of("outcome=FOUND", "region=NOWHERE", "collectionRoute=BOAT", "ageDisputed=maybe")) {
            String field = filter.substring(0, filter.indexOf('='));
            for (String report : List.of("prevalence?season=", "line-list?season=")) {
                as("epidemiologist")
                        .get("/api/v1/" + report + season + "&" + filter)
                        .then()
                        .statusCode(422)
                        .body("errors[0].field", equalTo(field))
                        .body("errors[0].rule", equalTo("NOT_A_VALUE"))
                        .body("errors[0].message", containsString("allowed: "));
            }
        }
    }

    private static void impossible(String season, String filters, String field, String message) {
        for (String report : List.of("prevalence?", "chance-of-detection?", "comparisons?")) {
            as("epidemiologist")
                    .get("/api/v1/" + report + filters + "&season=" + season)
                    .then()
                    .statusCode(422)
                    .body("errors[0].field", equalTo(field))
                    .body("errors[0].rule", equalTo("IMPOSSIBLE_COMBINATION"))
                    .body("errors[0].message", containsString(message));
        }
    }
}
