package org.dentary.prevalence;

import static org.dentary.prevalence.comparison.ClassFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.comparison.ClassFixture;
import org.hibernate.SessionFactory;
import org.hibernate.stat.Statistics;
import org.junit.jupiter.api.Test;

/** Seasons as rows or columns of one report, live or each on its cut. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SeasonsBesideTest {
    @Inject
    LineFixture lines;

    @Inject
    ClassFixture classes;

    @Inject
    EntityManager entities;

    private String season(int detected, int counted) {
        String season = lines.season();
        lines.add(season, detected, ALine.of("ADULT", "MALE", "DETECTED"));
        lines.add(season, counted - detected, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        return season;
    }

    private static JsonPath told(String query) {
        return as("epidemiologist")
                .get("/api/v1/prevalence?" + query)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    @Test
    void seasonsStandSideBySideEachWithItsOwnInterval() {
        String earlier = season(15, 148);
        String none = lines.season();
        String season = season(81, 263);
        String query = "season=" + season + "&by=ageClass&columns=season&interval=CLOPPER_PEARSON&with=" + earlier + ","
                + none;
        JsonPath told = told(query);
        // Newcombe 1998, Stat Med 17:857-872, Table I, exact limits: 15/148 .0578 .1617, 81/263 .2527 .3676.
        adults(told, earlier, 15, 148, .0578, .1617);
        adults(told, season, 81, 263, .2527, .3676);
        assertEquals(List.of(earlier, none, season), told.getList("columnTotals.season"), "oldest first");
        assertNull(told.get("columnTotals[1].prevalence"), "nobody of that season was sampled");
        assertEquals(411, told.getInt("total.counted"));
        assertEquals(411, told.getInt("takenToCounted.find { it.step == 'TAKEN' }.animals"));
        assertEquals(List.of(earlier, none), told.getList("with.season"));
        assertTrue(told.getString("notes").contains("Seasons stand side by side"));
        as("epidemiologist")
                .get("/prevalence?" + query)
                .then()
                .statusCode(200)
                .body(containsString("Beside it " + earlier))
                .body(containsString("<strong>15 of 148</strong>"))
                .body(containsString("<strong>81 of 263</strong>"));
    }

    private static void adults(JsonPath told, String season, int detected, int counted, double lower, double upper) {
        String cell = "cells.find { it.season == '" + season + "' && it.ageClass == 'ADULT' }.";
        assertEquals(detected, told.getInt(cell + "detected"));
        assertEquals(counted, told.getInt(cell + "counted"));
        assertEquals(lower, told.getDouble(cell + "lower"), 5e-5);
        assertEquals(upper, told.getDouble(cell + "upper"), 5e-5);
    }

    @Test
    void onCutsTheAnswerStaysAndASupersededOneOfThemIsTold() {
        String earlier = season(3, 40);
        String season = season(5, 50);
        String of = classes.cut(earlier, "Then");
        String name = "Now " + UUID.randomUUID();
        String query = "season=" + season + "&by=season&cut=" + classes.cut(season, name) + "&with=" + of;
        String first = as("epidemiologist").get("/api/v1/prevalence?" + query).asString();
        lines.add(earlier, 9, ALine.of("ADULT", "MALE", "DETECTED"));
        lines.add(season, 9, ALine.of("ADULT", "MALE", "DETECTED"));
        assertEquals(
                first, as("epidemiologist").get("/api/v1/prevalence?" + query).asString());
        assertEquals(List.of(40, 50), JsonPath.from(first).getList("cells.counted"));
        assertEquals("Then", JsonPath.from(first).getString("with[0].cut.name"));
        as("epidemiologist")
                .contentType("application/json")
                .header("If-Match", "\"0\"")
                .body(Map.of("season", earlier, "name", "Then", "superseded", "One station was missing"))
                .put("/api/v1/data-cuts/" + of)
                .then()
                .statusCode(200);
        as("epidemiologist")
                .get("/api/v1/prevalence?" + query)
                .then()
                .header("Data-Cut-Superseded", equalTo("UTF-8''One%20station%20was%20missing"));
        as("epidemiologist").get("/api/v1/prevalence.pdf?" + query).then().statusCode(200);
        // The check after an upgrade computes it again and finds nothing moved.
        String check = UUID.randomUUID().toString();
        as("epidemiologist").put("/api/v1/data-cuts/rechecks/" + check).then().statusCode(201);
        assertEquals(
                List.of(),
                as("auditor")
                        .get("/api/v1/data-cuts/rechecks/" + check)
                        .jsonPath()
                        .getList("figures.findAll { it.cut == '" + name + "' }"));
    }

    @Test
    void whatWouldMixOrCountTwiceIsRefused() {
        String earlier = season(3, 40);
        String season = season(5, 50);
        String cut = classes.cut(season, "Now");
        String other = classes.cut(earlier, "Then");
        refused(
                "season=" + season + "&by=sex&with=" + earlier,
                "IMPOSSIBLE_COMBINATION",
                "add season to by or to columns");
        refused("season=" + season + "&by=season&with=" + season, "SAME_SEASON", "would count twice");
        refused("season=" + season + "&by=season&with=" + earlier + "," + earlier, "SAME_SEASON", "Name each once");
        refused(
                "season=" + season + "&by=season&cut=" + cut + "&with=" + earlier,
                "NEEDS_A_CUT",
                "name a cut of that season");
        refused("season=" + season + "&by=season&with=" + other, "NEEDS_A_CUT", "the report is live");
        as("epidemiologist")
                .get("/api/v1/prevalence?season=" + season + "&by=season&with=NEVER")
                .then()
                .statusCode(404);
        for (String report : List.of("chance-of-detection?", "ageing-error?matrix=X&", "true-prevalence?")) {
            as("epidemiologist")
                    .get("/api/v1/" + report + "season=" + season + "&with=" + earlier)
                    .then()
                    .statusCode(422)
                    .body("errors[0].field", equalTo("with"));
        }
        as("epidemiologist")
                .get("/prevalence?season=" + season + "&unit=" + SeasonFixture.UNIT)
                .then()
                .statusCode(200);
    }

    private static void refused(String query, String rule, String message) {
        as("epidemiologist")
                .get("/api/v1/prevalence?" + query)
                .then()
                .statusCode(422)
                .body("errors[0].rule", equalTo(rule))
                .body("errors[0].message", containsString(message));
    }

    /** Each season with its cuts can be chosen to stand beside: they are read together, not one after the other. */
    @Test
    void thePageTakesAsManyStatementsForManySeasonsAsForFew() {
        String season = season(3, 40);
        long before = statements(season);
        for (int i = 0; i < 3; i++) {
            classes.cut(season(1, 9), "Beside " + i);
        }
        assertEquals(before, statements(season));
    }

    private long statements(String season) {
        Statistics statistics =
                entities.getEntityManagerFactory().unwrap(SessionFactory.class).getStatistics();
        statistics.setStatisticsEnabled(true);
        statistics.clear();
        as("epidemiologist").get("/prevalence?season=" + season).then().statusCode(200);
        return statistics.getPrepareStatementCount();
    }
}
