package org.dentary.prevalence.cut;

import static org.dentary.prevalence.comparison.ClassFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.ageing.AgeingFixture;
import org.dentary.prevalence.comparison.ClassFixture;
import org.junit.jupiter.api.Test;

/** A cut marked superseded says so wherever it is used again, though every stored answer keeps its bytes. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SupersededTest {
    private static final double[][] PLAN = {{.985, .015, 0}, {.01, .92, .07}, {0, .05, .95}};

    @Inject
    ClassFixture classes;

    @Inject
    AgeingFixture ageing;

    @Inject
    EntityManager entities;

    @Test
    void everyReRunPrintsTheReasonAndTheBytesStay() {
        String season = classes.season(AgeingFixture.HERE);
        String cut = classes.cut(season, "First");
        String of = "?season=" + season + "&cut=" + cut;
        String matrix = "&matrix=" + ageing.stated(PLAN);
        List<String> calls = List.of(
                "/api/v1/prevalence" + of,
                "/api/v1/prevalence.csv" + of,
                "/api/v1/chance-of-detection" + of,
                "/api/v1/chance-of-detection.csv" + of,
                "/api/v1/chance-of-detection-take-next.csv" + of,
                "/api/v1/comparisons" + of,
                "/api/v1/comparisons.csv" + of,
                "/api/v1/ageing-error" + of + matrix,
                "/api/v1/pictures/weeks.csv" + of,
                "/api/v1/pictures/seasons.svg" + of,
                "/api/v1/line-list" + of,
                "/api/v1/line-list.csv" + of);
        List<String> pages = List.of(
                "/prevalence" + of,
                "/chance-of-detection" + of,
                "/prevalence/comparisons" + of,
                "/prevalence/ageing-error" + of + matrix,
                "/pictures" + of,
                "/line-list" + of);
        Map<String, String> before = new LinkedHashMap<>();
        calls.forEach(call -> before.put(
                call,
                as("epidemiologist")
                        .get(call)
                        .then()
                        .statusCode(200)
                        .header("Data-Cut-Superseded", (String) null)
                        .extract()
                        .asString()));
        pages.forEach(page -> as("epidemiologist")
                .get(page)
                .then()
                .statusCode(200)
                .body(containsString("ata cut “First” of "))
                .body(not(containsString("Superseded:"))));
        as("epidemiologist")
                .contentType("application/json")
                .header("If-Match", "\"0\"")
                .body(Map.of("season", season, "name", "First", "superseded", "Two trays were mixed up"))
                .put("/api/v1/data-cuts/" + cut)
                .then()
                .statusCode(200);
        before.forEach((call, answer) -> assertEquals(
                answer,
                as("epidemiologist")
                        .get(call)
                        .then()
                        .header("Data-Cut-Superseded", equalTo("UTF-8''Two%20trays%20were%20mixed%20up"))
                        .extract()
                        .asString(),
                call));
        pages.forEach(page ->
                as("epidemiologist").get(page).then().body(containsString("Superseded: Two trays were mixed up")));
    }

    @Test
    void theOtherSeasonsCutIsToldOfToo() {
        String season = classes.season(AgeingFixture.HERE);
        String other = classes.season(AgeingFixture.HERE);
        String cut = classes.cut(other, "Before");
        as("epidemiologist")
                .contentType("application/json")
                .header("If-Match", "\"0\"")
                .body(Map.of("season", other, "name", "Before", "superseded", "A station came late"))
                .put("/api/v1/data-cuts/" + cut)
                .then()
                .statusCode(200);
        String query = "?season=" + season + "&with=" + cut;
        as("epidemiologist")
                .get("/api/v1/comparisons" + query)
                .then()
                .header("Data-Cut-Superseded", equalTo("UTF-8''A%20station%20came%20late"));
        as("epidemiologist")
                .get("/prevalence/comparisons" + query)
                .then()
                .body(containsString("Superseded: A station came late."));
    }

    /** On a cut the page of comparisons is made from the stored answer, as every other page is. */
    @Test
    void thePageOfComparisonsShowsTheAnswerThatIsKept() {
        String season = classes.season(AgeingFixture.HERE);
        String cut = classes.cut(season, "Kept");
        String query = "season=" + season + "&cut=" + cut;
        String page =
                as("epidemiologist").get("/prevalence/comparisons?" + query).asString();
        List<?> kept = entities.createNativeQuery("select answer from report_answer where cut = :cut")
                .setParameter("cut", UUID.fromString(cut))
                .getResultList();
        assertEquals(1, kept.size());
        String json = as("epidemiologist").get("/api/v1/comparisons?" + query).asString();
        assertEquals(kept.get(0).toString(), json);
        String sentence = as("epidemiologist")
                .get("/api/v1/comparisons?" + query)
                .jsonPath()
                .getString("comparisons[0].sentence");
        assertTrue(page.contains(sentence), sentence);
        // What the prevalence report says of itself would be untrue here: this answer does test.
        assertFalse(json.contains("no p-value stands behind it"), json);
        assertTrue(json.contains("adjusted for their number"), json);
    }

    /** What people call a season may be put right between the two: the table still says what was answered first. */
    @Test
    void theTableOfComparisonsIsMadeFromTheAnswerThatIsKept() {
        String season = classes.season(AgeingFixture.HERE);
        String other = classes.season(AgeingFixture.HERE);
        String query =
                "season=" + season + "&cut=" + classes.cut(season, "Now") + "&with=" + classes.cut(other, "Then");
        String sentence = as("epidemiologist")
                .get("/api/v1/comparisons?" + query)
                .jsonPath()
                .getString("comparisons.find { it.kind == 'SEASONS_CRUDE' }.sentence");
        assertTrue(sentence.contains("animals of " + other), sentence);
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery("update season set name = 'Renamed ' || code where code = :code")
                        .setParameter("code", other)
                        .executeUpdate());
        String csv =
                as("epidemiologist").get("/api/v1/comparisons.csv?" + query).asString();
        assertTrue(csv.contains(sentence), csv);
    }
}
