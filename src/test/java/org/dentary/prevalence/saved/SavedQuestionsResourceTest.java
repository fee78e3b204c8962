package org.dentary.prevalence.saved;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SavedQuestionsResourceTest {
    @Inject
    LineFixture lines;

    private static RequestSpecification as(String username) {
        return given().auth()
                .preemptive()
                .basic(username, SeasonFixture.PASSWORD)
                .contentType("application/json")
                .redirects()
                .follow(false);
    }

    private static ValidatableResponse keep(String id, String name, String query, Boolean withdrawn, String ifMatch) {
        Map<String, Object> body = new HashMap<>(Map.of("name", name, "query", query));
        if (withdrawn != null) {
            body.put("withdrawn", withdrawn);
        }
        RequestSpecification request = as("epidemiologist").body(body);
        return (ifMatch == null ? request : request.header("If-Match", ifMatch))
                .put("/api/v1/saved-questions/" + id)
                .then();
    }

    private static String cut(String season, String name) {
        String id = UUID.randomUUID().toString();
        as("epidemiologist")
                .body(Map.of("season", season, "name", name))
                .put("/api/v1/data-cuts/" + id)
                .then()
                .statusCode(201);
        return id;
    }

    @Test
    void aQuestionIsAskedAgainOfANewCutOfAnotherSeason() {
        String season = lines.season();
        lines.add(season, 20, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        String next = lines.season();
        lines.add(next, 33, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        lines.add(next, 5, ALine.of("ADULT", "MALE", "NOT_DETECTED").from("VEHICLE"));
        String cut = cut(next, "New cut");
        String id = UUID.randomUUID().toString();
        String name = "Exact by sex, vehicles too " + id;
        String query = "season=" + season + "&by=sex&interval=CLOPPER_PEARSON"
                + "&mortalitySource=HUNTER_HARVEST,VEHICLE&cut=" + cut(season, "Old cut");
        keep(id, name, query, null, null).statusCode(201).header("ETag", "\"0\"");
        keep(id, name, query, null, null).statusCode(200);
        String there = as("liaison")
                .get("/api/v1/saved-questions/" + id + "/answer?cut=" + cut)
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
        assertFalse(there.contains(season), there);
        JsonPath report = as("liaison")
                .urlEncodingEnabled(false)
                .get(there)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        assertEquals(next, report.getString("season"));
        assertEquals("New cut", report.getString("cut.name"));
        assertEquals(38, report.getInt("total.counted"));
        assertEquals("CLOPPER_PEARSON", report.getString("interval"));
        assertEquals("sex", report.getString("by[0]"));
        // Without a cut: the lines of the season it was asked of, as they are.
        String live =
                as("liaison").get("/api/v1/saved-questions/" + id + "/answer").header("Location");
        JsonPath now = as("liaison").urlEncodingEnabled(false).get(live).jsonPath();
        assertEquals(season, now.getString("season"));
        assertEquals(null, now.<Object>get("cut"));
    }

    @Test
    void aSeasonBesideIsToldByItsNewestCutThatHoldsGood() {
        String before = lines.season();
        lines.add(before, 20, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        String season = lines.season();
        lines.add(season, 30, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        String id = UUID.randomUUID().toString();
        keep(id, "Two seasons " + id, "season=" + season + "&by=season&with=" + before, null, null)
                .statusCode(201);
        String cut = cut(season, "Of the later");
        String path = "/api/v1/saved-questions/" + id + "/answer?cut=" + cut;
        as("liaison")
                .get(path)
                .then()
                .statusCode(422)
                .body("code", equalTo("NEEDS_A_CUT"))
                .body("detail", containsString(before));
        as("liaison")
                .accept("text/html")
                .get("/saved-questions/" + id + "/answer?cut=" + cut)
                .then()
                .statusCode(422)
                .body(containsString("no data cut of that season holds good"));
        cut(before, "First");
        String newest = cut(before, "Second");
        String there = as("liaison").get(path).then().statusCode(303).extract().header("Location");
        assertTrue(there.contains("with=" + newest), there);
        JsonPath report = as("liaison")
                .urlEncodingEnabled(false)
                .get(there)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        assertEquals(50, report.getInt("total.counted"));
        String onCuts = UUID.randomUUID().toString();
        keep(onCuts, "Of cuts " + onCuts, "season=" + season + "&by=season&cut=" + cut + "&with=" + newest, null, null)
                .statusCode(201);
        String live = as("liaison")
                .get("/api/v1/saved-questions/" + onCuts + "/answer")
                .header("Location");
        assertTrue(live.contains("with=" + before), live);
    }

    @Test
    void aNameIsOneQuestionUntilItIsWithdrawn() {
        String season = lines.season();
        String id = UUID.randomUUID().toString();
        String name = "Monthly " + id;
        keep(id, name, "season=" + season, null, null).statusCode(201);
        keep(UUID.randomUUID().toString(), name.toUpperCase(java.util.Locale.ROOT), "season=" + season, null, null)
                .statusCode(409)
                .body("code", equalTo("NAME_TAKEN"));
        keep(id, name, "season=" + season + "&by=sex", null, null).statusCode(409);
        keep(id, name, "season=" + season + "&by=sex", null, "\"0\"")
                .statusCode(200)
                .header("ETag", "\"1\"")
                .body("query", containsString("by=sex"));
        keep(id, name, "season=" + season, true, "\"0\"").statusCode(412);
        keep(id, name, "season=" + season, true, "\"1\"").statusCode(200).body("withdrawn", equalTo(true));
        as("auditor").get("/api/v1/saved-questions").then().statusCode(200).body("items.name", not(hasItem(name)));
        keep(UUID.randomUUID().toString(), name, "season=" + season, null, null).statusCode(201);
    }

    @Test
    void whatIsNoQuestionIsRefusedNamingWhatToChange() {
        String season = lines.season();
        String id = UUID.randomUUID().toString();
        keep(id, "Wrong", "season=" + season + "&by=shoe", null, null)
                .statusCode(422)
                .body("errors[0].field", equalTo("by"));
        keep(id, "Wrong", "by=sex", null, null).statusCode(422).body("errors[0].field", equalTo("season"));
        keep(id, "Wrong", "season=" + season + "&by=%zz", null, null)
                .statusCode(422)
                .body("code", equalTo("MALFORMED"))
                .body("errors[0].message", containsString("'%zz' is no part of an address"));
        as("epidemiologist")
                .body("{}")
                .put("/api/v1/saved-questions/" + id)
                .then()
                .statusCode(422);
        as("liaison")
                .body(Map.of("name", "x", "query", "season=" + season))
                .put("/api/v1/saved-questions/" + id)
                .then()
                .statusCode(403);
        as("epidemiologist")
                .get("/api/v1/saved-questions/" + id + "/answer")
                .then()
                .statusCode(404)
                .body("code", equalTo("QUESTION_UNKNOWN"));
        as("sampler").get("/api/v1/saved-questions").then().statusCode(403);
    }

    @Test
    void thePageKeepsAsksAgainAndWithdraws() {
        String season = lines.season();
        lines.add(season, 20, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        String name = "On the page " + UUID.randomUUID();
        RequestSpecification form = given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .redirects()
                .follow(false)
                .accept("text/html");
        form.formParam("name", name)
                .formParam("query", "season=" + season + "&by=sex")
                .post("/saved-questions")
                .then()
                .statusCode(303);
        String id = as("epidemiologist")
                .get("/api/v1/saved-questions")
                .jsonPath()
                .getString("items.find { it.name == '" + name + "' }.id");
        as("epidemiologist").accept("text/html").get("/saved-questions").then().body(containsString(name));
        String there = as("epidemiologist")
                .accept("text/html")
                .get("/saved-questions/" + id + "/answer?cut=")
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
        assertTrue(there.contains("/prevalence?season=" + season + "&"), there);
        as("epidemiologist")
                .accept("text/html")
                .get("/saved-questions/" + id + "/answer?cut=First")
                .then()
                .statusCode(422)
                .body(containsString("is not the id of a data cut; choose one of the list"));
        String again = given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .formParam("name", name)
                .formParam("query", "season=" + season)
                .post("/saved-questions")
                .then()
                .statusCode(409)
                .extract()
                .asString();
        assertTrue(again.contains("take another name"), again);
        given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .redirects()
                .follow(false)
                .post("/saved-questions/" + id + "/withdrawal")
                .then()
                .statusCode(303);
        as("epidemiologist").accept("text/html").get("/saved-questions").then().body(not(containsString(name)));
    }
}
