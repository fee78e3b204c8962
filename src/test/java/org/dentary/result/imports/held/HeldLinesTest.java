package org.dentary.result.imports.held;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.PersistenceException;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.submission.SubmissionFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A line left out of a file waits, until the laboratory reports it anew or somebody says what came of it. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class HeldLinesTest {
    private static final String HEADER =
            "specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on\r\n";
    private static final String DAYS = ",2025-11-18,2025-11-19\r\n";

    @Inject
    SeasonFixture season;

    @Inject
    SubmissionFixture bench;

    @Inject
    EntityManager entities;

    private String code;
    private UUID file;

    /** A file with one line left out by choice (2) and one that no code can be read from (3). */
    @BeforeEach
    void leaveTwoLinesOut() {
        season.ensure();
        Deer deer = bench.aDeerSent();
        code = deer.label(Part.NODE_LEFT);
        file = posted(
                code + ",H-1,T_SCREEN,SCREENING,NOT_DETECTED" + DAYS + "1E5,H-2,T_SCREEN,SCREENING,SUSPECT" + DAYS,
                "[2,3]");
    }

    @Test
    void bothWaitWithWhatTheySayAndWhatWasWrong() {
        JsonPath list = as("liaison")
                .get("/api/v1/held-lines?limit=1000")
                .then()
                .statusCode(200)
                .body("count", greaterThan(1))
                .extract()
                .jsonPath();
        String mine = "items.find { it.resultImport == '" + file + "' && it.line == ";
        assertAll(
                () -> equal("WAITS", list, mine + "2 }.state"),
                () -> equal(code, list, mine + "2 }.specimens"),
                () -> equal("NOT_DETECTED", list, mine + "2 }.finding"),
                () -> equal(null, list, mine + "2 }.problems"),
                () -> equal("T_LIAISON", list, mine + "2 }.heldBy"),
                () -> equal("H-2", list, mine + "3 }.accession"),
                () -> equal(true, list, mine + "3 }.problems.contains('specimen_code: ')"));
        as("auditor")
                .get("/api/v1/held-lines/table.csv")
                .then()
                .statusCode(200)
                .body(containsString(file + ",3,"), containsString("held_at"));
    }

    @Test
    void whatTheLaboratoryReportsAnewLeavesTheList() {
        posted(code + ",H-1,T_SCREEN,SCREENING,NOT_DETECTED" + DAYS, "[]");
        state(2, "REPORTED");
        state(3, "WAITS");
        as("liaison")
                .get("/api/v1/held-lines?limit=1000")
                .then()
                .body("items.findAll { it.resultImport == '" + file + "' }.line", equalTo(List.of(3)));
    }

    @Test
    void whatIsSettledStaysOnRecordAndIsNotSettledOtherwise() {
        settle("{\"note\":\" withdrawn by telephone \"}")
                .statusCode(201)
                .body("state", equalTo("SETTLED"), "note", equalTo("withdrawn by telephone"))
                .body("settledBy", equalTo("T_LIAISON"), "settledAt", notNullValue());
        settle("{\"note\":\" withdrawn by telephone \"}").statusCode(200);
        settle("{\"note\":\"another word\"}").statusCode(409).body("code", equalTo("ALREADY_RECORDED"));
        state(3, "SETTLED");
        assertThrows(
                PersistenceException.class,
                () -> QuarkusTransaction.requiringNew()
                        .run(() -> entities.createNativeQuery("update held_line_settlement set note = 'other'")
                                .executeUpdate()));
    }

    @Test
    void whatCannotBeSettledIsRefusedInWords() {
        settle("{\"note\":\" \"}").statusCode(422).body("errors.field", hasItem("note"));
        settle("{\"note\":\"" + "x".repeat(501) + "\"}").statusCode(422).body("detail", containsString("500"));
        put("liaison", file + "/4", "{\"note\":\"none\"}").statusCode(404).body("code", equalTo("HELD_LINE_UNKNOWN"));
        put("liaison", UUID.randomUUID() + "/3", "{\"note\":\"none\"}").statusCode(404);
        put("auditor", file + "/3", "{\"note\":\"none\"}").statusCode(403);
        for (String blind : new String[] {"sampler", "epidemiologist", "notifier"}) {
            as(blind).get("/api/v1/held-lines").then().statusCode(403);
            as(blind).accept("text/html").get("/results/held-lines").then().statusCode(403);
        }
    }

    @Test
    void thePageKeepsWhatWasTypedAndTakesTheLineOff() {
        String lines = "/results/held-lines/" + file;
        String form = lines + "/3\"";
        String note = "read by telephone, entered by hand: " + file;
        as("liaison")
                .accept("text/html")
                .formParam("note", "y".repeat(501))
                .post(lines + "/3")
                .then()
                .statusCode(422)
                .body(containsString("up to 500"), containsString("value=\"" + "y".repeat(501)));
        as("liaison")
                .accept("text/html")
                .redirects()
                .follow(false)
                .formParam("note", note)
                .post(lines + "/3")
                .then()
                .statusCode(303);
        as("liaison")
                .accept("text/html")
                .get("/results/held-lines")
                .then()
                .body(containsString(lines + "/2\""), not(containsString(form)), not(containsString(note)));
        as("auditor")
                .accept("text/html")
                .get("/results/held-lines?all=true")
                .then()
                .statusCode(200)
                .body(containsString(note), not(containsString("<button>Take")));
        as("liaison")
                .accept("text/html")
                .get("/results")
                .then()
                .body(containsString("<a href=\"/results/held-lines\">"));
    }

    private UUID posted(String rows, String leaveOut) {
        UUID id = UUID.randomUUID();
        as("liaison")
                .contentType("text/csv")
                .body(HEADER + rows)
                .put("/api/v1/result-imports/" + id + "?laboratory=T_LAB")
                .then()
                .statusCode(201);
        as("liaison")
                .contentType("application/json")
                .body("{\"leaveOut\":" + leaveOut + "}")
                .post("/api/v1/result-imports/" + id + "/posting")
                .then()
                .statusCode(200);
        return id;
    }

    private void state(int line, String state) {
        equal(
                state,
                as("liaison").get("/api/v1/held-lines?all=true&limit=1000").jsonPath(),
                "items.find { it.resultImport == '" + file + "' && it.line == " + line + " }.state");
    }

    private static void equal(Object expected, JsonPath list, String path) {
        assertEquals(expected, list.get(path), path);
    }

    private ValidatableResponse settle(String body) {
        return put("liaison", file + "/3", body);
    }

    private static ValidatableResponse put(String account, String line, String body) {
        return as(account)
                .contentType("application/json")
                .body(body)
                .put("/api/v1/held-lines/" + line + "/settlement")
                .then();
    }
}
