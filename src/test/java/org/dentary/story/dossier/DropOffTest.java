package org.dentary.story.dossier;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** A drop barrel: nobody knows who put it in; custody begins when a named person with access empties it. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class DropOffTest {
    private static final int HOURS = 200;

    @Inject
    IntakeFixture intake;

    @Inject
    Clock clock;

    @Test
    void custodyBeginsWithWhoEmptiesTheBarrelAndTimeIsToldFromThen() {
        Deer deer = intake.aDeer();
        String code = deer.label(Part.NODE_LEFT);
        Instant emptied = clock.instant().minus(Duration.ofHours(HOURS));
        intake.take(deer, droppedOff(deer, emptied));
        JsonPath chain = chain(code);
        assertEquals(List.of("COLLECTED"), chain.getList("events.kind"));
        assertEquals("T_SAMPLER", chain.getString("custodian"));
        assertEquals(SeasonFixture.STORE, chain.getString("place"));
        assertEquals(null, chain.getString("events[0].from"), "nobody is known to have had it before");
        assertTrue(
                Math.abs(chain.getDouble("hoursSinceCollection") - HOURS) <= 1,
                chain.getString("hoursSinceCollection"));
        assertEquals(1, chain.getInt("lateEntries[0].sequence"));
        assertTrue(chain.getDouble("lateEntries[0].hours") >= HOURS - 1, chain.getString("lateEntries"));
        as("auditor")
                .get("/specimens/" + code + "/custody")
                .then()
                .statusCode(200)
                .body(allOf(
                        containsString("Now with Test sampler"),
                        containsString("who put it in is not recorded. Custody begins with who emptied it"),
                        containsString("Station freezer"),
                        containsString("8 days ago"),
                        containsString("Entry 1 (collected) was entered late")));
    }

    @Test
    void nothingIsRecordedOfTheTimeBeforeAndOnlyTheStoresPeopleEmptyIt() {
        Deer deer = intake.aDeer();
        String code = deer.label(Part.NODE_LEFT);
        Instant emptied = clock.instant().minus(Duration.ofHours(2));
        ObjectNode body = droppedOff(deer, emptied);
        intake.put("coordinator", "/animals/" + deer.kit(), body)
                .statusCode(403)
                .body("code", equalTo("STORE_NOT_YOURS"));
        as("auditor").get("/api/v1/animals/" + deer.kit()).then().statusCode(404);
        intake.take(deer, body);
        event("sampler", code, emptied.minus(Duration.ofHours(1))).statusCode(422);
        event("coordinator", code, emptied.plus(Duration.ofHours(1)))
                .statusCode(409)
                .body("code", equalTo("NOT_HELD"));
        event("sampler", code, emptied.plus(Duration.ofHours(1))).statusCode(201);
        assertEquals(2, chain(code).getList("events").size());
    }

    @Test
    void whatReachedAStationSaysNothingOfABarrel() {
        Deer deer = intake.aDeer();
        String code = deer.label(Part.NODE_LEFT);
        intake.take(deer, intake.yearlingWithLeftNode(deer));
        as("auditor").get("/specimens/" + code + "/custody").then().body(not(containsString("Left at a drop-off")));
    }

    private ObjectNode droppedOff(Deer deer, Instant emptied) {
        return IntakeFixture.with(
                intake.facts().put("collectionRoute", "DROP_OFF"),
                intake.node(deer)
                        .put("collectedAt", emptied.atOffset(ZoneOffset.UTC).toString())
                        .put("place", SeasonFixture.STORE));
    }

    private static ValidatableResponse event(String account, String code, Instant at) {
        return as(account)
                .contentType("application/json")
                .body(Map.of(
                        "codes",
                        List.of(code),
                        "kind",
                        "TEMPERATURE_READ",
                        "temperatureCelsius",
                        3,
                        "occurredAt",
                        at.toString()))
                .put("/api/v1/custody-events/" + UUID.randomUUID())
                .then();
    }

    private static JsonPath chain(String code) {
        return as("auditor").get("/api/v1/specimens/" + code + "/custody").jsonPath();
    }
}
