package org.dentary.result.review;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.FindingsFixture;
import org.junit.jupiter.api.Test;

/** An odd outcome leaves the work list when somebody looked at it, and comes back when it reads otherwise. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ReviewsTest {
    @Inject
    FindingsFixture laboratory;

    @Inject
    IntakeFixture intake;

    @Inject
    EntityManager entities;

    @Test
    void whatWasLookedAtIsOnRecordAndWaitsNoLongerUntilItReadsOtherwise() {
        Deer odd = anOddOne();
        Map<String, Object> waits = waiting(odd);
        assertNotNull(waits, "inconclusive beside not detected is looked at by a person");
        String since = (String) waits.get("since");
        UUID id = UUID.randomUUID();
        put(id, odd, since, " ").statusCode(422);
        put(id, odd, "2020-01-01T00:00:00Z", "the other jar").statusCode(409).body("code", equalTo("READS_OTHERWISE"));
        put(id, odd, since, "the laboratory ran it twice").statusCode(201).body("current", equalTo(true));
        put(id, odd, since, "the laboratory ran it twice").statusCode(200);
        put(UUID.randomUUID(), odd, since, "me too").statusCode(409).body("code", equalTo("LOOKED_AT_ALREADY"));
        assertNull(waiting(odd));
        assertFalse(as("liaison").get("/reviews/waiting.csv").asString().contains(odd.kit()));
        String looks = as("auditor").get("/reviews/looks.csv").asString();
        assertTrue(looks.contains(odd.kit() + ",CWD,") && looks.contains(",the laboratory ran it twice,"), looks);
        onTheRight(odd, "CONFIRMATORY", "T_CONFIRM");
        Map<String, Object> again = waiting(odd);
        assertNotNull(again, "another finding came, so it is looked at anew");
        as("auditor")
                .get("/api/v1/reviews/looks?limit=1000")
                .then()
                .body("items.find { it.id == '" + id + "' }.current", equalTo(false));
        Deer plain = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        laboratory.finds(plain, "SCREENING", "NOT_DETECTED", null).statusCode(201);
        put(UUID.randomUUID(), plain, since, "x").statusCode(409).body("code", equalTo("NOTHING_ODD"));
    }

    @Test
    void thePageTakesWhatWasFoundAndKeepsWhatWasTyped() {
        Deer odd = anOddOne();
        String since = (String) waiting(odd).get("since");
        ValidatableResponse refused =
                post(odd, "2020-01-01T00:00:00Z", "typed already").then();
        refused.statusCode(409).body(containsString("reads otherwise since"));
        post(odd, since, "").then().statusCode(422);
        assertEquals(303, post(odd, since, "found in the notebook").statusCode());
        as("liaison")
                .get("/reviews")
                .then()
                .statusCode(200)
                .body(containsString("found in the notebook"), containsString("Looked at"));
        as("auditor").get("/reviews").then().statusCode(200).body(not(containsString("<button>Looked at")));
        as("epidemiologist").get("/reviews").then().statusCode(403);
        as("epidemiologist").get("/api/v1/reviews").then().statusCode(403);
        as("notifier")
                .contentType("application/json")
                .body("{}")
                .put("/api/v1/reviews/looks/" + UUID.randomUUID())
                .then()
                .statusCode(403);
        as("liaison").get("/api/v1/reviews?after=moon").then().statusCode(422);
    }

    private Deer anOddOne() {
        Deer deer = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        String left = deer.label(Part.NODE_LEFT);
        String right = deer.label(Part.NODE_RIGHT);
        intake.put(
                        "sampler",
                        "/animals/" + deer.kit() + "/specimens/" + right,
                        intake.specimen(right, "MEDIAL_RETROPHARYNGEAL_NODE", "RIGHT"))
                .statusCode(201);
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(
                                "insert into submission_specimen (submission, code, packed_at, packed_by, recorded_at) select submission, '"
                                        + right
                                        + "', packed_at, packed_by, recorded_at from submission_specimen where code = '"
                                        + left + "'")
                        .executeUpdate());
        laboratory.finds(deer, "SCREENING", "NOT_DETECTED", null).statusCode(201);
        onTheRight(deer, "SCREENING", "T_SCREEN");
        return deer;
    }

    private void onTheRight(Deer deer, String stage, String method) {
        intake.put(
                        "liaison",
                        "/findings/" + UUID.randomUUID(),
                        "{\"specimens\":[\"" + deer.label(Part.NODE_RIGHT) + "\"],\"method\":\"" + method
                                + "\",\"stage\":\"" + stage
                                + "\",\"finding\":\"INCONCLUSIVE\",\"status\":\"FINAL\",\"accession\":\"A-"
                                + deer.kit() + "-R-" + stage
                                + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-20\",\"reportedOn\":\"2025-11-21\"}")
                .statusCode(201);
    }

    private static Response post(Deer deer, String since, String note) {
        return as("liaison")
                .redirects()
                .follow(false)
                .formParams("kit", deer.kit(), "disease", "CWD", "since", since, "note", note)
                .post("/reviews");
    }

    private ValidatableResponse put(UUID id, Deer deer, String since, String note) {
        return intake.put(
                "liaison",
                "/reviews/looks/" + id,
                "{\"kit\":\"" + deer.kit() + "\",\"disease\":\"CWD\",\"since\":\"" + since + "\",\"note\":\"" + note
                        + "\"}");
    }

    private static Map<String, Object> waiting(Deer deer) {
        String next = "/api/v1/reviews?limit=1000";
        while (next != null) {
            Response page = as("liaison").urlEncodingEnabled(false).get(next);
            Map<String, Object> found = page.jsonPath().getMap("items.find { it.kit == '" + deer.kit() + "' }");
            if (found != null && !found.isEmpty()) {
                return found;
            }
            String link = page.header("Link");
            next = link == null ? null : link.substring(1, link.indexOf('>'));
        }
        return null;
    }
}
