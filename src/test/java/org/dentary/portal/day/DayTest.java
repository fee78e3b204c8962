package org.dentary.portal.day;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The end of a day at a station: what came in today, and tissue of the day on which it was taken (common practice, no source). */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class DayTest {
    private static final String DAY = "/api/v1/station-day?station=" + SeasonFixture.STATION;
    private static final String TAKEN = "&date=" + IntakeFixture.DIED_ON;

    @Inject
    IntakeFixture deer;

    @Inject
    SeasonFixture season;

    @BeforeEach
    void accounts() {
        season.ensure();
    }

    @Test
    void whatDoesNotAddUpIsNamedAndTheRestIsCounted() {
        JsonPath before = day("");
        Deer one = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one));
        Deer two = deer.aDeer();
        ObjectNode photographed = deer.facts().put("jawStatus", "PHOTO_TO_READ");
        photographed.putArray("identifiers").addObject().put("type", "EAR_TAG").put("value", "T" + two.kit());
        photographed.putObject("contact").put("name", "Osric Penhale");
        deer.take(two, photographed);
        Deer three = deer.aDeer();
        ObjectNode both = deer.facts();
        both.putArray("specimens")
                .add(deer.node(three))
                .add(deer.specimen(three.label(Part.NODE_RIGHT), "MEDIAL_RETROPHARYNGEAL_NODE", "RIGHT"));
        deer.take(three, both);
        JsonPath after = day("");
        Map<String, Integer> more = Map.of(
                "animals", 3,
                "numbered", 1,
                "withTissue", 2,
                "somebodyToTell", 1,
                "jawsRead", 1,
                "jawsKept", 1,
                "jawsPhotographed", 1,
                "photosKept", 0,
                "jawsNotExamined", 0);
        more.forEach((what, count) -> assertEquals(before.getInt(what) + count, after.getInt(what), what));
        assertEquals(List.of("NO_NUMBER", "ONE_NODE"), gaps(after, one.kit()));
        assertEquals(List.of("NO_PHOTO", "NO_TISSUE"), gaps(after, two.kit()));
        assertEquals(List.of("NO_NUMBER"), gaps(after, three.kit()));
        JsonPath taken = day(TAKEN);
        assertEquals(List.of("LOOSE"), gaps(taken, one.kit()));
        assertEquals(List.of("LOOSE", "LOOSE"), gaps(taken, three.kit()));
        assertFalse(taken.getList("gaps.code").contains(two.label(Part.NODE_LEFT)));
        assertTrue(as("sampler")
                .get("/api/v1/station-day.csv?station=" + SeasonFixture.STATION)
                .asString()
                .contains(two.kit() + ",,NO_TISSUE,no tissue was taken"));
    }

    @Test
    void aLongListBeginsWithTheFirstSoThatTheCountStaysInReach() {
        for (int i = 0; i < 13; i++) {
            Deer one = deer.aDeer();
            deer.take(one, deer.yearlingWithLeftNode(one));
        }
        int gaps = day("").getList("gaps").size();
        assertTrue(gaps >= 26);
        String first = page("");
        assertTrue(first.contains("What does not add up: " + gaps), first);
        assertEquals(25, named(first));
        assertTrue(first.contains("Show all of them"), first);
        String all = page("&all=true");
        assertEquals(gaps, named(all));
        assertFalse(all.contains("Show all of them"), all);
    }

    private static String page(String asked) {
        return as("sampler")
                .accept("text/html")
                .get("/day?station=" + SeasonFixture.STATION + asked)
                .asString();
    }

    private static int named(String page) {
        return page.split("<th scope=\"row\"><a class=\"code\"", -1).length - 1;
    }

    @Test
    void anEntryInErrorIsSaidAndCountsForNothing() {
        Deer one = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one));
        JsonPath before = day("");
        as("sampler")
                .contentType("application/json")
                .header("If-Match", "\"0\"")
                .body(deer.facts().put("enteredInError", true).put("reason", "scanned twice"))
                .put("/api/v1/animals/" + one.kit())
                .then()
                .statusCode(200);
        JsonPath after = day("");
        assertEquals(before.getInt("animals") - 1, after.getInt("animals"));
        assertEquals(before.getInt("enteredInError") + 1, after.getInt("enteredInError"));
        assertEquals(List.of(), gaps(after, one.kit()));
        assertEquals(List.of(), gaps(day(TAKEN), one.kit()));
    }

    @Test
    void whatWasReportedLostIsNoLongerLookedFor() {
        Deer one = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one));
        assertEquals(List.of("LOOSE"), gaps(day(TAKEN), one.kit()));
        as("sampler")
                .contentType("application/json")
                .body(Map.of(
                        "codes", List.of(one.label(Part.NODE_LEFT)),
                        "kind", "LOST",
                        "occurredAt", "2025-11-14T18:00:00-06:00",
                        "reason", "fell into the river with the cooler"))
                .put("/api/v1/custody-events/" + UUID.randomUUID())
                .then()
                .statusCode(201);
        assertEquals(List.of(), gaps(day(TAKEN), one.kit()));
    }

    @Test
    void jarsOnTheTableAreHeldAgainstTheRecordAndNothingIsWritten() {
        Deer one = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one));
        Deer still = deer.aDeer();
        deer.take(still, deer.yearlingWithLeftNode(still));
        Deer two = deer.aDeer();
        String missing = shown(one.label(Part.NODE_LEFT));
        String page = count(two.label(Part.NODE_LEFT));
        assertTrue(page.contains("1 scanned; it does not add up"), page);
        assertTrue(page.contains("Scanned, and not taken here that day"), page);
        assertTrue(between(page, "Recorded here and not scanned", "</p>").contains(missing), page);
        String second = count(one.label(Part.NODE_LEFT));
        assertFalse(between(second, "<div class=\"caution\"", "</div>").contains(missing), second);
        as("sampler")
                .accept("text/html")
                .contentType("application/x-www-form-urlencoded; charset=UTF-8")
                .formParams("station", SeasonFixture.STATION, "date", IntakeFixture.DIED_ON, "codes", "A2C4B6H8JK")
                .post("/day")
                .then()
                .statusCode(422)
                .body(containsString("character 5 is B"), containsString("A2C4B6H8JK"));
    }

    @Test
    void aSamplerSeesTheStationsTheyServeAndReadersNone() {
        as("sampler-two").get(DAY).then().statusCode(403).body("code", equalTo("STATION_NOT_SERVED"));
        as("notifier").get(DAY).then().statusCode(403);
        as("sampler").get(DAY + "&date=tomorrow").then().statusCode(422).body("errors[0].field", equalTo("date"));
        as("sampler")
                .accept("text/html")
                .get("/day")
                .then()
                .statusCode(200)
                .header("Cache-Control", "private, no-store")
                .body(containsString("Count the jars"))
                .body(containsString("href=\"/intake\" aria-current=\"page\""));
    }

    private static JsonPath day(String more) {
        return as("sampler").get(DAY + more).then().statusCode(200).extract().jsonPath();
    }

    private static List<String> gaps(JsonPath day, String kit) {
        return day.getList("gaps.findAll { it.kit == '" + kit + "' }.what");
    }

    private static String count(String codes) {
        return as("sampler")
                .accept("text/html")
                .contentType("application/x-www-form-urlencoded; charset=UTF-8")
                .formParams("station", SeasonFixture.STATION, "date", IntakeFixture.DIED_ON, "codes", codes)
                .post("/day")
                .then()
                .statusCode(200)
                .extract()
                .asString();
    }

    private static String between(String page, String from, String to) {
        int start = page.indexOf(from);
        assertTrue(start >= 0, from + " is not in\n" + page);
        return page.substring(start, page.indexOf(to, start));
    }

    private static String shown(String code) {
        return code.substring(0, 4) + "-" + code.substring(4, 8) + "-" + code.substring(8);
    }
}
