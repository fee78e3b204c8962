package org.dentary.custody.box;

import static org.dentary.custody.Http.as;
import static org.dentary.custody.Http.json;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.custody.CustodyFixture;
import org.dentary.custody.CustodyService;
import org.dentary.custody.HeadView;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.RecordedEvent;
import org.dentary.ledger.LedgerEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.DatabaseTestResource;
import org.hibernate.SessionFactory;
import org.hibernate.stat.Statistics;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class BoxesResourceTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    CustodyService custody;

    @Inject
    LedgerStore ledger;

    @Inject
    BoxService boxes;

    @Inject
    EntityManager entities;

    @Inject
    Clock clock;

    private Instant collectedAt;

    @BeforeEach
    void time() {
        collectedAt = clock.instant().minus(Duration.ofHours(2));
    }

    @Test
    void aBoxIsOpenedFilledAndEmptied() {
        String box = aBox("sampler");
        String code = fixture.collected(1, collectedAt).get(0);
        putIn("sampler", box, code).statusCode(201).body("count", equalTo(1)).body("contents.code", contains(code));
        putIn("sampler", box, code).statusCode(200);
        assertEquals(CustodyKind.PACKED, last(code).kind());
        assertEquals(box, last(code).field("box"));
        as("sampler")
                .delete("/api/v1/boxes/" + box + "/contents/" + code)
                .then()
                .statusCode(204);
        as("sampler")
                .delete("/api/v1/boxes/" + box + "/contents/" + code)
                .then()
                .statusCode(204);
        as("auditor")
                .get("/api/v1/boxes/" + box)
                .then()
                .statusCode(200)
                .header("ETag", "\"0\"")
                .body("contents", empty());
        assertEquals(CustodyKind.UNPACKED, last(code).kind());
        assertEquals(3, ledger.chain(code).size(), "what changes nothing writes nothing");
    }

    @Test
    void noBoxIntoItselfHoweverDeep() {
        String outer = aBox("sampler");
        String middle = aBox("sampler");
        String inner = aBox("sampler");
        putIn("sampler", outer, outer).statusCode(409).body("code", equalTo("BOX_INTO_ITSELF"));
        putIn("sampler", outer, middle).statusCode(201);
        putIn("sampler", middle, inner).statusCode(201);
        putIn("sampler", inner, outer).statusCode(409).body("code", equalTo("BOX_INTO_ITSELF"));
        putIn("sampler", inner, middle).statusCode(409).body("code", equalTo("BOX_INTO_ITSELF"));
        as("auditor")
                .get("/api/v1/boxes/" + outer)
                .then()
                .body("contents.code", contains(middle, inner))
                .body("contents.depth", contains(1, 2))
                .body("count", equalTo(0));
    }

    @Test
    void refusesWhatIsNoBoxIsUnknownOrNotHeld() {
        String code = fixture.collected(1, collectedAt).get(0);
        json("sampler")
                .body(Map.of("place", "van"))
                .put("/api/v1/boxes/" + code)
                .then()
                .statusCode(422)
                .body("code", equalTo("NOT_A_BOX"));
        String unopened = fixture.aBoxLabel();
        putIn("sampler", unopened, code).statusCode(404).body("code", equalTo("BOX_UNKNOWN"));
        json("sampler").body(Map.of()).put("/api/v1/boxes/" + unopened).then().statusCode(422);
        json("sampler")
                .body(Map.of("place", "van"))
                .put("/api/v1/boxes/NOT-A-CODE")
                .then()
                .statusCode(422);
        String foreign = new org.dentary.codes.Minting().mint().label(Part.BOX).value();
        as("sampler").get("/api/v1/boxes/" + foreign).then().statusCode(404).body("code", equalTo("LABEL_UNKNOWN"));
        String box = aBox("liaison");
        putIn("sampler", box, code).statusCode(409).body("code", equalTo("NOT_HELD"));
        putIn("liaison", box, code).statusCode(409).body("code", equalTo("NOT_HELD"));
        putIn("liaison", box, fixture.labels(1, Part.NODE_LEFT).get(0))
                .statusCode(409)
                .body("code", equalTo("NOT_IN_CUSTODY"));
        putIn("epidemiologist", box, code).statusCode(403);
    }

    @Test
    void aChangedPlaceMovesAllThatIsInTheBox() {
        String box = aBox("sampler");
        String code = fixture.collected(1, collectedAt).get(0);
        putIn("sampler", box, code).statusCode(201);
        Map<String, String> van = Map.of("place", "van 4");
        json("sampler").body(van).put("/api/v1/boxes/" + box).then().statusCode(409);
        json("sampler")
                .header("If-Match", "\"9\"")
                .body(van)
                .put("/api/v1/boxes/" + box)
                .then()
                .statusCode(412);
        json("sampler")
                .header("If-Match", "\"0\"")
                .body(van)
                .put("/api/v1/boxes/" + box)
                .then()
                .statusCode(200)
                .header("ETag", "\"1\"")
                .body("place", equalTo("van 4"));
        assertEquals("van 4", custody.heads(List.of(code)).get(code).place());
        assertEquals(CustodyKind.MOVED, last(code).kind());
        assertEquals(last(box).text("handOver"), last(code).text("handOver"));
        assertTrue(!last(code).event().bytes().contains("van 4"), "a place in words is only digested");
    }

    @Test
    void handingOverABoxHandsOverWhatIsInItAndCountingFindsTheMissing() {
        String box = aBox("sampler");
        List<String> codes = fixture.collected(3, collectedAt);
        codes.forEach(code -> putIn("sampler", box, code).statusCode(201));
        UUID id = UUID.randomUUID();
        offer(id, box).statusCode(201).body("offered", equalTo(4));
        putIn("sampler", box, codes.get(0)).statusCode(200);
        accept(id, List.of(box, codes.get(0), codes.get(1)))
                .statusCode(200)
                .body("state", equalTo("PART_ACCEPTED"))
                .body("accepted", equalTo(3))
                .body("missing", equalTo(1));
        HeadView missing = custody.heads(codes).get(codes.get(2));
        assertEquals("T_SAMPLER", missing.custodian());
        assertEquals(null, missing.box());
        as("auditor")
                .get("/api/v1/boxes/" + box)
                .then()
                .body("custodian", equalTo("T_LIAISON"))
                .body("count", equalTo(2));
    }

    @Test
    void whatIsHandedOverAloneLeavesItsBox() {
        String box = aBox("sampler");
        String code = fixture.collected(1, collectedAt).get(0);
        putIn("sampler", box, code).statusCode(201);
        UUID id = UUID.randomUUID();
        offer(id, code).statusCode(201).body("offered", equalTo(1));
        accept(id, List.of(code)).statusCode(200);
        as("auditor")
                .get("/api/v1/boxes/" + box)
                .then()
                .body("contents", empty())
                .body("box", nullValue());
    }

    @Test
    void fiveHundredSpecimensMoveInAFewStatementsUnderOneHandOver() {
        String box = aBox("sampler");
        List<String> codes = fixture.collected(500, collectedAt);
        fixture.as("sampler");
        boxes.putIn(box, codes, null);
        UUID id = UUID.randomUUID();
        offer(id, box).statusCode(201).body("offered", equalTo(501));
        Statistics statistics =
                entities.getEntityManagerFactory().unwrap(SessionFactory.class).getStatistics();
        statistics.setStatisticsEnabled(true);
        statistics.clear();
        accept(id, List.of(box)).statusCode(200).body("accepted", equalTo(501));
        long statements = statistics.getPrepareStatementCount();
        assertTrue(statements < 60, statements + " statements for 501 codes");
        Set<String> handOvers = new HashSet<>();
        ledger.chains(codes).values().forEach(chain -> {
            LedgerEvent event = chain.get(chain.size() - 1);
            assertEquals("HANDOVER_ACCEPTED", event.kind());
            handOvers.add(RecordedEvent.of(event).text("handOver"));
        });
        assertEquals(Set.of(id.toString()), handOvers);
    }

    private String aBox(String account) {
        String box = fixture.aBoxLabel();
        json(account)
                .body(Map.of("place", SeasonFixture.STATION, "occurredAt", collectedAt.toString()))
                .put("/api/v1/boxes/" + box)
                .then()
                .statusCode(201)
                .header("ETag", "\"0\"")
                .body("place", equalTo(SeasonFixture.STATION));
        return box;
    }

    private static ValidatableResponse putIn(String account, String box, String code) {
        return as(account).put("/api/v1/boxes/" + box + "/contents/" + code).then();
    }

    private ValidatableResponse offer(UUID id, String code) {
        return json("sampler")
                .body(Map.of(
                        "codes",
                        List.of(code),
                        "to",
                        "liaison",
                        "place",
                        SeasonFixture.STATION,
                        "occurredAt",
                        clock.instant().toString()))
                .put("/api/v1/hand-overs/" + id)
                .then();
    }

    private ValidatableResponse accept(UUID id, List<String> codes) {
        return json("liaison")
                .body(Map.of("codes", codes, "occurredAt", clock.instant().toString()))
                .post("/api/v1/hand-overs/" + id + "/acceptance")
                .then();
    }

    private RecordedEvent last(String code) {
        var chain = ledger.chain(code);
        return RecordedEvent.of(chain.get(chain.size() - 1));
    }
}
