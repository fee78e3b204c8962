package org.dentary.story;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.animal.line.LineService;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.submission.SubmissionFixture;
import org.junit.jupiter.api.Test;

/** Until it is released, what the findings say reaches only those who may know, and the others see no difference at all. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class EmbargoTest {
    @Inject
    IntakeFixture deer;

    @Inject
    SubmissionFixture bench;

    @Inject
    LineService lines;

    @Inject
    Clock clock;

    @Inject
    EntityManager entities;

    @Test
    void aSuspectLooksToOthersExactlyAsIfNothingHadBeenReported() {
        Deer one = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one));
        for (String account : List.of("sampler", "epidemiologist")) {
            assertFalse(
                    read(account, "/animals/" + one.kit(), "application/json").contains("derivedOutcome"));
        }
        String sampler = read("sampler", "/animals/" + one.kit(), "application/json");
        String epidemiologist = read("epidemiologist", "/animals/" + one.kit(), "application/json");
        String list = read("epidemiologist", "/animals?q=" + one.kit(), "application/json");
        String csv = read("epidemiologist", "/animals?q=" + one.kit(), "text/csv");
        suspect(one);
        assertEquals(sampler, read("sampler", "/animals/" + one.kit(), "application/json"));
        assertEquals(epidemiologist, read("epidemiologist", "/animals/" + one.kit(), "application/json"));
        assertEquals(list, read("epidemiologist", "/animals?q=" + one.kit(), "application/json"));
        assertEquals(csv, read("epidemiologist", "/animals?q=" + one.kit(), "text/csv"));
        assertTrue(csv.contains("PENDING"));
        for (String account : List.of("liaison", "coordinator", "auditor")) {
            as(account)
                    .get("/api/v1/animals/" + one.kit())
                    .then()
                    .body("outcome", equalTo("PENDING"))
                    .body("outcomes[0].derivedOutcome", equalTo("SUSPECT"))
                    .body("outcomes[0].explanation", equalTo("An open screening detection."))
                    .body("findings", hasSize(1))
                    .body("next.what", hasItems("HAND_OVER", "CONFIRM"));
        }
        as("notifier")
                .get("/api/v1/animals/" + one.kit())
                .then()
                .body("outcomes[0].derivedOutcome", equalTo("SUSPECT"))
                .body("findings", hasSize(0));
    }

    @Test
    void aSuspectThatALaboratoryReportedReachesNobodyWhoMayNotKnow() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        bench.sendAsLiaison(one);
        String finding = "{\"specimens\":[\"" + one.label(Part.NODE_LEFT)
                + "\"],\"method\":\"T_SCREEN\",\"stage\":\"SCREENING\",\"finding\":\"SUSPECT\",\"status\":\"FINAL\","
                + "\"accession\":\"A-" + one.kit() + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-20\","
                + "\"reportedOn\":\"2025-11-20\"}";
        deer.put("liaison", "/findings/" + UUID.randomUUID(), finding)
                .statusCode(201)
                .body("specimens", equalTo(List.of(one.label(Part.NODE_LEFT))));
        for (String account : List.of("sampler", "epidemiologist")) {
            String story = read(account, "/animals/" + one.kit(), "application/json");
            assertTrue(story.contains("\"outcome\":\"PENDING\""), story);
            assertFalse(story.contains("SUSPECT") || story.contains("derived") || story.contains("T_LAB"), story);
        }
        as("liaison")
                .get("/api/v1/animals/" + one.kit())
                .then()
                .body("outcomes[0].derivedOutcome", equalTo("SUSPECT"))
                .body("findings[0].specimens", equalTo(List.of(one.label(Part.NODE_LEFT))));
    }

    @Test
    void whereASpecimenGoesFromItsFirstLaboratoryIsNotSeenOnTheWayEither() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        String code = one.label(Part.NODE_LEFT);
        deer.put("liaison", "/animals/" + one.kit() + "/specimens/" + code, deer.node(one))
                .statusCode(201);
        bench.receive(bench.sent(code), code).statusCode(201);
        Map<String, Object> before = specimen("sampler", one);
        assertEquals("LABORATORY", before.get("custodian"));
        deer.put(
                        "liaison",
                        "/hand-overs/" + UUID.randomUUID(),
                        "{\"codes\":[\"" + code
                                + "\"],\"to\":\"T_COURIER\",\"signedBy\":\"R. Okonedo\",\"occurredAt\":\""
                                + clock.instant() + "\"}")
                .statusCode(201);
        assertEquals("T_COURIER", specimen("liaison", one).get("custodian"));
        assertEquals(before, specimen("sampler", one));
    }

    private static Map<String, Object> specimen(String account, Deer one) {
        return as(account).get("/api/v1/animals/" + one.kit()).jsonPath().getMap("specimens[0]");
    }

    @Test
    void aReleasedDetectionIsSeenByAll() {
        Deer one = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one));
        lines.setOutcomes(List.of(new LineService.OutcomeOf(one.kit(), "CWD", "DETECTED", "DETECTED", "")), "RELEASE");
        as("sampler")
                .get("/api/v1/animals/" + one.kit())
                .then()
                .body("outcome", equalTo("DETECTED"))
                .body("timeline.find { it.what == 'OUTCOME' }.words", equalTo("DETECTED"));
    }

    @Test
    void aSamplerListsTheDeerOfItsOwnStations() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        as("sampler-two").get("/api/v1/animals?q=" + one.kit()).then().body("items", hasSize(0));
        as("sampler").get("/api/v1/animals?q=" + one.kit()).then().body("items", hasSize(1));
        as("sampler").get("/api/v1/animals?sex=STAG").then().statusCode(422).body("errors[0].field", equalTo("sex"));
    }

    @Test
    void theListIsPagedByAKeyAndLinksOn() {
        for (int i = 0; i < 3; i++) {
            Deer one = deer.aDeer();
            deer.take(one, deer.facts());
        }
        var first = as("auditor").get("/api/v1/animals?limit=2&sex=MALE").then().body("items", hasSize(2));
        String link = first.extract().header("Link");
        assertTrue(link.endsWith("; rel=\"next\""), link);
        String last = first.extract().path("items[1].kit");
        assertTrue(link.contains("after=" + last) && link.contains("sex=MALE"), link);
        List<String> seen = first.extract().path("items.kit");
        List<String> next = as("auditor")
                .urlEncodingEnabled(false)
                .get(link.substring(1, link.indexOf('>')))
                .then()
                .extract()
                .path("items.kit");
        assertTrue(next.stream().noneMatch(seen::contains), seen + " " + next);
    }

    private static String read(String account, String path, String type) {
        return as(account)
                .accept(type)
                .get("/api/v1" + path)
                .then()
                .statusCode(200)
                .extract()
                .asString();
    }

    private void suspect(Deer one) {
        UUID finding = UUID.randomUUID();
        sql("insert into finding (id, method, disease, stage, finding, status, laboratory, accession, tested_on,"
                + " reported_on, recorded_by, recorded_at) values ('" + finding
                + "', 'T_SCREEN', 'CWD', 'SCREENING', 'SUSPECT', 'FINAL', 'T_LAB', 'A-1', '2025-11-20', '2025-11-20',"
                + " 'T_LIAISON', now())");
        sql("insert into finding_specimen values ('" + finding + "', '" + one.label(Part.NODE_LEFT) + "')");
        sql("insert into outcome_explanation values ('" + one.kit()
                + "', 'CWD', 'An open screening detection.', null, now()) on conflict (kit, disease)"
                + " do update set explanation = excluded.explanation");
        lines.setOutcomes(List.of(new LineService.OutcomeOf(one.kit(), "CWD", "SUSPECT", "PENDING", "")), "FINDING");
    }

    private void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }
}
