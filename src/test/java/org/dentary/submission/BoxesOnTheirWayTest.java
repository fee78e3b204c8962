package org.dentary.submission;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A box goes with what lies in it: packed at the bench, shipped, counted in at the laboratory, taken back. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class BoxesOnTheirWayTest {
    @Inject
    SeasonFixture season;

    @Inject
    SubmissionFixture bench;

    private String one;
    private String two;
    private String box;
    private String id;

    @BeforeEach
    void twoTubesPackedIntoABox() {
        season.ensure();
        one = bench.aNode();
        two = bench.aNode();
        box = bench.aBox();
        id = bench.begun("T_LAB");
        bench.pack(id, one, into(box)).statusCode(201);
        bench.pack(id, two, into(box)).statusCode(201);
    }

    @Test
    void whatIsPackedIntoABoxAtTheBenchLiesInItForCustodyToo() {
        assertEquals(box, chain(one).getString("box"));
        assertEquals(List.of(one, two).stream().sorted().toList(), contents(box));
        bench.pack(id, two, into(box)).statusCode(200);
        as("liaison")
                .delete("/api/v1/submissions/" + id + "/specimens/" + two)
                .then()
                .statusCode(200);
        assertNull(chain(two).getString("box"), "taken out of the parcel, it is out of the box");
        assertEquals(List.of(one), contents(box));
    }

    @Test
    void theBoxIsShippedArrivesAndComesBackWithWhatLiesInIt() {
        bench.dispatch(id).statusCode(200);
        assertBox("SHIPPED", "T_COURIER");
        assertEquals(box, chain(one).getString("box"));
        fill(bench.aNode()).statusCode(409).body("detail", containsString("SHIPPED"));
        bench.receive(id, one).statusCode(201);
        assertBox("ARRIVED", SeasonFixture.LABORATORY);
        assertEquals(box, chain(one).getString("box"));
        assertNull(chain(two).getString("box"), "what was missing was not in the box");
        assertEquals(List.of(one), contents(box));
        assertTrue(chain(one).getBoolean("verified"));
        assertTrue(chain(box).getBoolean("verified"));
        String event = UUID.randomUUID().toString();
        as("liaison")
                .contentType("application/json")
                .body("{\"codes\":[\"" + box + "\"],\"kind\":\"RETURNED\",\"occurredAt\":\"2025-11-17T10:00:00-06:00\","
                        + "\"reason\":\"the empty box came back\"}")
                .put("/api/v1/custody-events/" + event)
                .then()
                .statusCode(201);
        assertBox("OPEN", "T_LIAISON");
    }

    @Test
    void aBoxThatHoldsWhatIsOnNoListIsNotSent() {
        String stowaway = bench.aNode();
        fill(stowaway).statusCode(201);
        bench.dispatch(id)
                .statusCode(409)
                .body("code", equalTo("BOX_HOLDS_OTHERS"))
                .body("detail", containsString(stowaway.substring(0, 4)));
        assertEquals("PACKING", bench.view(id).getString("state"));
        assertBox("OPEN", "T_LIAISON");
        as("liaison")
                .delete("/api/v1/boxes/" + box + "/contents/" + stowaway)
                .then()
                .statusCode(204);
        bench.dispatch(id).statusCode(200);
    }

    @Test
    void aRecalledParcelComesBackWithItsBox() {
        bench.dispatch(id).statusCode(200);
        bench.post(
                        id + "/recall",
                        "{\"occurredAt\":\"2025-11-15T10:00:00-06:00\",\"reason\":\"meant for another laboratory\"}")
                .statusCode(200);
        assertBox("OPEN", "T_LIAISON");
        assertEquals(box, chain(two).getString("box"));
    }

    @Test
    void aTubeStoredAloneLeavesItsBox() {
        as("liaison")
                .contentType("application/json")
                .body("{\"codes\":[\"" + one + "\"],\"kind\":\"STORED\",\"place\":\"" + SeasonFixture.STORE
                        + "\",\"occurredAt\":\"" + SubmissionFixture.LEFT_AT + "\",\"reason\":\"on paper\"}")
                .put("/api/v1/custody-events/" + UUID.randomUUID())
                .then()
                .statusCode(201);
        assertNull(chain(one).getString("box"));
        assertEquals(List.of(two), contents(box));
    }

    private void assertBox(String state, String custodian) {
        JsonPath found = as("liaison").get("/api/v1/boxes/" + box).jsonPath();
        assertEquals(state + " with " + custodian, found.getString("state") + " with " + found.getString("custodian"));
    }

    private static List<String> contents(String box) {
        return as("liaison").get("/api/v1/boxes/" + box).jsonPath().getList("contents.code", String.class).stream()
                .sorted()
                .toList();
    }

    private ValidatableResponse fill(String code) {
        return as("liaison")
                .contentType("application/json")
                .body("{}")
                .put("/api/v1/boxes/" + box + "/contents/" + code)
                .then();
    }

    private static String into(String box) {
        return "{\"packedAt\":\"" + SubmissionFixture.PACKED_AT + "\",\"box\":\"" + box + "\"}";
    }

    private static JsonPath chain(String code) {
        return as("auditor").get("/api/v1/specimens/" + code + "/custody").jsonPath();
    }
}
