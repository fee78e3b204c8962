package org.dentary.custody.event;

import static org.dentary.custody.Http.as;
import static org.dentary.custody.Http.json;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.custody.Collected;
import org.dentary.custody.CustodyFixture;
import org.dentary.custody.CustodyService;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.problem.RuleBroken;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * What is entered about the past: taken and marked late from who had it then, also where it was destroyed or moved on since;
 * refused where what came later would have been impossible.
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class LateEntryTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    CustodyService custody;

    @Inject
    Clock clock;

    private Instant collectedAt;
    private Instant destroyedAt;
    private String code;

    @BeforeEach
    void aSpecimen() {
        collectedAt = clock.instant().minus(Duration.ofHours(3));
        destroyedAt = collectedAt.plus(Duration.ofHours(1));
        code = fixture.collected(1, collectedAt).get(0);
    }

    @Test
    void whatHappenedBeforeADestructionIsTakenFromWhoHadItThen() {
        destroyed();
        record("sampler", "TEMPERATURE_READ", destroyedAt.minusSeconds(600), "temperatureCelsius", 4.5)
                .statusCode(201)
                .body("events[0].late", equalTo(true));
        record("sampler", "STORED", destroyedAt.minusSeconds(500), "place", SeasonFixture.STORE)
                .statusCode(201);
        record("liaison", "TEMPERATURE_READ", destroyedAt.minusSeconds(700), "temperatureCelsius", 4.5)
                .statusCode(409)
                .body("code", equalTo("NOT_HELD"));
        chain().body("destroyed", equalTo(true))
                .body("verified", equalTo(true))
                .body("events.kind", contains("COLLECTED", "DESTROYED", "TEMPERATURE_READ", "STORED"))
                .body("lateEntries.sequence", contains(3, 4))
                .body("custodian", equalTo(SeasonFixture.STORE));
    }

    @Test
    void nothingHappensAtOrAfterADestruction() {
        destroyed();
        for (Instant at : List.of(destroyedAt, destroyedAt.plusSeconds(1), clock.instant())) {
            record("sampler", "TEMPERATURE_READ", at, "temperatureCelsius", 4.5)
                    .statusCode(409)
                    .body("code", equalTo("DESTROYED"));
        }
        chain().body("events.kind", contains("COLLECTED", "DESTROYED")).body("lateEntries", empty());
    }

    @Test
    void whoDestroyedItMustStillHaveHadIt() {
        destroyed();
        Map<String, Object> paper = new HashMap<>(Map.of(
                "codes",
                List.of(code),
                "to",
                SeasonFixture.PARTY,
                "occurredAt",
                destroyedAt.minusSeconds(300).toString(),
                "paperForm",
                "P-1"));
        handOver(paper).statusCode(409).body("code", equalTo("DESTROYED_BY_ANOTHER"));
        paper.put("to", SeasonFixture.STORE);
        handOver(paper).statusCode(201);
        chain().body("events.kind", contains("COLLECTED", "DESTROYED", "STORED"));
    }

    @Test
    void anOfferFromBeforeIsAcceptedOnlyWhereTheReceiverCouldDestroyIt() {
        destroyed();
        UUID id = UUID.randomUUID();
        json("sampler")
                .body(Map.of(
                        "codes",
                        List.of(code),
                        "to",
                        "T_LIAISON",
                        "occurredAt",
                        destroyedAt.minusSeconds(300).toString()))
                .put("/api/v1/hand-overs/" + id)
                .then()
                .statusCode(201);
        for (Map.Entry<Instant, String> one : Map.of(
                        destroyedAt.minusSeconds(200), "DESTROYED_BY_ANOTHER", clock.instant(), "DESTROYED")
                .entrySet()) {
            json("liaison")
                    .body(Map.of(
                            "codes", List.of(code), "occurredAt", one.getKey().toString()))
                    .post("/api/v1/hand-overs/" + id + "/acceptance")
                    .then()
                    .statusCode(409)
                    .body("code", equalTo(one.getValue()));
        }
    }

    @Test
    void itIsNotDestroyedBeforeWhatCanOnlyHaveHappenedToTissue() {
        record("sampler", "STORED", destroyedAt, "place", SeasonFixture.STORE).statusCode(201);
        record("sampler", "DESTROYED", destroyedAt.minusSeconds(60), "reason", "incinerated")
                .statusCode(409)
                .body("code", equalTo("NOT_DESTROYED_THEN"))
                .body("detail", containsString("entry 2"));
        record("sampler", "DESTROYED", destroyedAt.plusSeconds(60), "reason", "incinerated")
                .statusCode(201);
        record("sampler", "DESTROYED", destroyedAt.plusSeconds(30), "reason", "incinerated")
                .statusCode(409)
                .body("code", equalTo("NOT_DESTROYED_THEN"));
    }

    @Test
    void aPieceIsCutFromWhatWasNotDestroyedYet() {
        destroyed();
        fixture.as("sampler");
        piece(destroyedAt.minusSeconds(60));
        RuleBroken refusal =
                Assertions.assertThrows(RuleBroken.class, () -> piece(destroyedAt.plusSeconds(60)), "nothing was left");
        Assertions.assertEquals("DESTROYED", refusal.code());
        chain().body("events.kind", contains("COLLECTED", "DESTROYED", "SPLIT"));
    }

    @Test
    void aLatePackingLeavesWhatMovedOnSinceWhereItIs() {
        String box = fixture.aBoxLabel();
        json("sampler")
                .body(Map.of("place", "van", "occurredAt", collectedAt.toString(), "reason", "paper"))
                .put("/api/v1/boxes/" + box)
                .then()
                .statusCode(201);
        record("sampler", "STORED", destroyedAt, "place", SeasonFixture.STORE).statusCode(201);
        json("sampler")
                .body(Map.of("occurredAt", destroyedAt.minusSeconds(60).toString()))
                .put("/api/v1/boxes/" + box + "/contents/" + code)
                .then()
                .statusCode(201);
        chain().body("events.kind", contains("COLLECTED", "STORED", "PACKED"))
                .body("box", equalTo(null))
                .body("place", equalTo(SeasonFixture.STORE));
        as("auditor").get("/api/v1/boxes/" + box).then().body("contents", empty());
        String other = fixture.collected(1, collectedAt).get(0);
        json("sampler")
                .put("/api/v1/boxes/" + box + "/contents/" + other)
                .then()
                .statusCode(201);
        as("auditor").get("/api/v1/boxes/" + box).then().body("contents.code", hasItem(other));
    }

    private void piece(Instant at) {
        String label = fixture.labels(1, Part.SPARE_1).get(0);
        custody.collected(List.of(new Collected(label, at, null, null, "GOOD", code)));
    }

    private void destroyed() {
        record("sampler", "DESTROYED", destroyedAt, "reason", "incinerated").statusCode(201);
    }

    private ValidatableResponse record(String account, String kind, Instant at, String field, Object value) {
        return json(account)
                .body(Map.of("codes", List.of(code), "kind", kind, "occurredAt", at.toString(), field, value))
                .put("/api/v1/custody-events/" + UUID.randomUUID())
                .then();
    }

    private static ValidatableResponse handOver(Map<String, Object> body) {
        return json("sampler")
                .body(body)
                .put("/api/v1/hand-overs/" + UUID.randomUUID())
                .then();
    }

    private ValidatableResponse chain() {
        return as("auditor").get("/api/v1/specimens/" + code + "/custody").then();
    }
}
