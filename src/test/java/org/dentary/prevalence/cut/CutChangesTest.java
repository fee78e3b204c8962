package org.dentary.prevalence.cut;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.junit.jupiter.api.Test;

/** What changed between two cuts: down to the animals and to every field of the line list, and nothing that is withheld. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CutChangesTest {
    @Inject
    LineFixture lines;

    private static RequestSpecification epidemiologist() {
        return given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .contentType("application/json");
    }

    private static String cut(String season, String name) {
        String id = UUID.randomUUID().toString();
        epidemiologist()
                .body(Map.of("season", season, "name", name))
                .put("/api/v1/data-cuts/" + id)
                .then()
                .statusCode(201);
        return id;
    }

    private static JsonPath changes(String from, String to) {
        return epidemiologist()
                .get("/api/v1/data-cuts/" + from + "/changes?to=" + to)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    @Test
    void anOutcomeThatIsWithheldIsNoChangeAndNoCause() {
        String season = lines.season();
        List<String> kits = lines.add(season, 2, ALine.of("ADULT", "MALE", "PENDING"));
        String before = cut(season, "Before");
        lines.withhold(kits, "SUSPECT");
        String after = cut(season, "After");
        JsonPath told = changes(before, after);
        assertEquals("Nothing changed", told.getString("summary"));
        assertEquals(List.of(), told.getList("changes"));
        // One of them is also put right: that is told, and the finding behind it still is not.
        lines.correct(kits.get(0), "sex", "FEMALE");
        lines.withhold(kits, "DETECTED");
        told = changes(before, cut(season, "Later"));
        assertEquals("1 with other facts changed", told.getString("summary"));
        assertEquals(kits.subList(0, 1), told.getList("changes.kit"));
        assertEquals("CORRECTION", told.getString("changes[0].cause"));
        assertEquals(List.of("sex"), told.getList("changes[0].details.field"));
        assertFalse(told.prettify().contains("FINDING"));
    }

    @Test
    void whatMovesAnAnimalOutOfAReportIsNamed() {
        String season = lines.season();
        List<String> kits = lines.add(season, 3, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        String before = cut(season, "Before");
        lines.correct(kits.get(0), "mortality_source", "VEHICLE");
        lines.correct(kits.get(1), "jaw_status", "NOT_EXAMINED");
        String after = cut(season, "After");
        JsonPath told = changes(before, after);
        assertEquals("2 with other facts changed", told.getString("summary"));
        assertEquals(
                Map.of("field", "mortalitySource", "before", "HUNTER_HARVEST", "after", "VEHICLE"),
                told.getMap("changes[0].details[0]"));
        assertEquals("jawStatus", told.getString("changes[1].details[0].field"));
        String page = given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .get("/data-cuts?season=" + season + "&from=" + before + "&to=" + after)
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertTrue(page.contains("Mortality source: Hunter harvest to Vehicle"), page);
    }

    @Test
    void eachKindOfChangeIsToldApartAndCountedInWords() {
        String season = lines.season();
        String other = lines.season();
        List<String> untested = lines.add(season, 1, ALine.of("ADULT", "MALE", "NOT_TESTED"));
        List<String> pending = lines.add(season, 2, ALine.of("ADULT", "MALE", "PENDING"));
        List<String> told = lines.add(season, 1, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        List<String> leaves = lines.add(season, 1, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        List<String> comes = lines.add(other, 1, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        String before = cut(season, "Before");
        lines.revise(untested, "PENDING");
        lines.revise(pending, "NOT_DETECTED");
        lines.revise(told, "DETECTED");
        lines.correct(leaves.get(0), "season", other);
        lines.correct(comes.get(0), "season", season);
        lines.add(season, 1, ALine.of("FAWN", "MALE", "PENDING"));
        epidemiologist()
                .get("/api/v1/data-cuts/" + before + "/changes?to=" + cut(season, "After"))
                .then()
                .body(
                        "summary",
                        containsString("2 pending resolved, 1 correction of an outcome,"
                                + " 1 untested before and tested or sent since, 1 late intake,"
                                + " 1 moved into the season, 1 left the season"));
    }

    @Test
    void aPageShowsTheFirstOfManyChangesAndTheFileAll() {
        String season = lines.season();
        String before = cut(season, "Before");
        List<String> kits = lines.add(season, 203, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        String after = cut(season, "After");
        assertEquals(203, changes(before, after).getList("changes").size());
        assertFalse(changes(before, after).getMap("").containsKey("first"));
        String page = given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .get("/data-cuts?season=" + season + "&from=" + before + "&to=" + after)
                .then()
                .statusCode(200)
                .body(containsString("The first 200 of 203; all of them are in the file."))
                .extract()
                .asString();
        assertEquals(
                200,
                kits.stream().filter(kit -> page.contains("/animals/" + kit)).count());
    }
}
