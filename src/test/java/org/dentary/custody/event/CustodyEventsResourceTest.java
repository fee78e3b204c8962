package org.dentary.custody.event;

import static org.dentary.custody.Http.as;
import static org.dentary.custody.Http.json;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

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
import org.dentary.custody.Arrival;
import org.dentary.custody.CustodyFixture;
import org.dentary.custody.ParcelService;
import org.dentary.custody.Shipment;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class CustodyEventsResourceTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    ParcelService parcels;

    @Inject
    Clock clock;

    private Instant collectedAt;

    @BeforeEach
    void time() {
        collectedAt = clock.instant().minus(Duration.ofHours(2));
    }

    @Test
    void theChainShowsEveryEventVerified() {
        String code = fixture.collected(1, collectedAt).get(0);
        UUID id = UUID.randomUUID();
        Map<String, Object> read = event("TEMPERATURE_READ", code, "temperatureCelsius", 4.5);
        put("sampler", id, read)
                .statusCode(201)
                .body("events", hasSize(1))
                .body("events[0].id", equalTo(id.toString()));
        put("sampler", id, read).statusCode(200).body("events", hasSize(1));
        read.put("temperatureCelsius", 5.5);
        put("sampler", id, read).statusCode(409).body("code", equalTo("ALREADY_RECORDED"));
        chain("auditor", code)
                .statusCode(200)
                .header("Cache-Control", "private, no-store")
                .body("custodian", equalTo("T_SAMPLER"))
                .body("place", equalTo(SeasonFixture.STATION))
                .body("since", notNullValue())
                .body("verified", equalTo(true))
                .body("events.sequence", contains(1, 2))
                .body("events.kind", contains("COLLECTED", "TEMPERATURE_READ"))
                .body("events[1].temperatureCelsius", equalTo(4.5f))
                .body("events[0].predecessor", equalTo("0".repeat(64)))
                .body("gaps", empty())
                .body("lateEntries", empty())
                .body("sealMismatches", empty());
    }

    @Test
    void anExcursionShowsUntilItIsCorrected() {
        String code = fixture.collected(1, collectedAt).get(0);
        fixture.preserved(code, "FRESH_CHILLED", collectedAt);
        UUID id = UUID.randomUUID();
        put("sampler", id, event("TEMPERATURE_READ", code, "temperatureCelsius", 45))
                .statusCode(201);
        chain("auditor", code)
                .body("excursions.temperatureCelsius", contains(45))
                .body("excursions[0].highestCelsius", equalTo(8));
        Map<String, Object> correction = event("CORRECTED", code, "temperatureCelsius", 4.5);
        correction.put("corrects", id.toString());
        correction.put("reason", "the point was not typed");
        put("coordinator", UUID.randomUUID(), correction).statusCode(201);
        chain("auditor", code)
                .body("excursions", empty())
                .body("events[1].correctedBy", equalTo(3))
                .body("events[2].corrects", equalTo(2))
                .body("events[2].reason", equalTo("the point was not typed"));
    }

    @Test
    void onlyTheAuthorOrTheDeskCorrectsAndOnlyAnEventOfThatCode() {
        String code = fixture.collected(1, collectedAt).get(0);
        String other = fixture.collected(1, collectedAt).get(0);
        UUID id = UUID.randomUUID();
        put("sampler", id, event("TEMPERATURE_READ", code, "temperatureCelsius", 4))
                .statusCode(201);
        Map<String, Object> correction = event("CORRECTED", code, "temperatureCelsius", 5);
        correction.put("corrects", id.toString());
        correction.put("reason", "typed wrong");
        put("sampler-two", UUID.randomUUID(), correction).statusCode(403).body("code", equalTo("NOT_YOURS"));
        correction.put("codes", List.of(other));
        put("sampler", UUID.randomUUID(), correction).statusCode(422).body("code", equalTo("NO_SUCH_EVENT"));
        correction.remove("corrects");
        put("sampler", UUID.randomUUID(), correction).statusCode(422).body("errors[0].field", equalTo("corrects"));
    }

    @Test
    void aSealThatDiffersOpensADiscrepancy() {
        String box = fixture.aBoxLabel();
        json("sampler")
                .body(Map.of("place", "van", "occurredAt", collectedAt.toString()))
                .put("/api/v1/boxes/" + box)
                .then()
                .statusCode(201);
        String code = fixture.collected(1, collectedAt).get(0);
        as("sampler").put("/api/v1/boxes/" + box + "/contents/" + code).then().statusCode(201);
        put("sampler", UUID.randomUUID(), now("TAMPER_SEAL_APPLIED", box, "tamperSeal", "S-100"))
                .statusCode(201)
                .body("events.code", hasItem(code));
        as("auditor").get("/api/v1/boxes/" + box).then().body("tamperSeal", equalTo("S-100"));
        put("sampler", UUID.randomUUID(), now("TAMPER_SEAL_CHECKED", box, "tamperSeal", "s 100"))
                .statusCode(201);
        chain("auditor", box).body("sealMismatches", empty()).body("discrepancies", empty());
        UUID id = UUID.randomUUID();
        put("sampler", id, now("TAMPER_SEAL_CHECKED", box, "tamperSeal", "S-101"))
                .statusCode(201);
        chain("auditor", box)
                .body("sealMismatches[0].expected", equalTo("S-100"))
                .body("sealMismatches[0].found", equalTo("S-101"))
                .body("discrepancies.kind", contains("SEAL_MISMATCH"))
                .body("verified", equalTo(true));
        chain("auditor", code).body("sealMismatches", hasSize(1));
    }

    @Test
    void eachKindSaysWhatItNeeds() {
        String code = fixture.collected(1, collectedAt).get(0);
        missing(code, "TEMPERATURE_READ", "temperatureCelsius");
        missing(code, "TAMPER_SEAL_APPLIED", "tamperSeal");
        missing(code, "MOVED", "place");
        missing(code, "LOST", "reason");
        missing(code, "HANDOVER_ACCEPTED", "kind");
        put("sampler", UUID.randomUUID(), event("TEMPERATURE_READ", code, "temperatureCelsius", 101))
                .statusCode(422)
                .body("errors[0].field", equalTo("temperatureCelsius"));
        put("sampler", UUID.randomUUID(), event("EATEN", code, "reason", "x"))
                .statusCode(422)
                .body("errors[0].field", equalTo("kind"));
        put("sampler", UUID.randomUUID(), event("STORED", code, "place", SeasonFixture.STATION))
                .statusCode(422)
                .body("code", equalTo("NOT_A_STORE"));
        put("sampler", UUID.randomUUID(), event("FORWARDED", code, "place", "somewhere"))
                .statusCode(422)
                .body("code", equalTo("NOT_A_LABORATORY"));
        put("liaison", UUID.randomUUID(), event("MOVED", code, "place", "van"))
                .statusCode(409)
                .body("code", equalTo("NOT_HELD"));
        put("auditor", UUID.randomUUID(), event("MOVED", code, "place", "van")).statusCode(403);
    }

    @Test
    void whatIsLostIsFoundByWhoeverFindsIt() {
        String code = fixture.collected(1, collectedAt).get(0);
        put("liaison", UUID.randomUUID(), now("FOUND", code, "place", "under the bench"))
                .statusCode(409)
                .body("code", equalTo("NOT_LOST"));
        put("sampler", UUID.randomUUID(), event("LOST", code, "reason", "not in the cooler"))
                .statusCode(201);
        chain("auditor", code).body("lost", equalTo(true));
        put("liaison", UUID.randomUUID(), now("FOUND", code, "place", "under the bench"))
                .statusCode(201);
        chain("auditor", code)
                .body("lost", equalTo(false))
                .body("custodian", equalTo("T_LIAISON"))
                .body("place", equalTo("under the bench"));
    }

    @Test
    void whatIsOnHoldIsNotDestroyedAndWhatIsDestroyedDoesNothingMore() {
        String code = fixture.collected(1, collectedAt).get(0);
        put("sampler", UUID.randomUUID(), event("HOLD_PLACED", code, "reason", "second test asked for"))
                .statusCode(201);
        put("sampler", UUID.randomUUID(), now("DESTROYED", code, "reason", "incinerated"))
                .statusCode(409)
                .body("code", equalTo("ON_HOLD"));
        put("sampler", UUID.randomUUID(), now("HOLD_LIFTED", code, "reason", "done"))
                .statusCode(201);
        put("sampler", UUID.randomUUID(), now("DESTROYED", code, "reason", "incinerated"))
                .statusCode(201);
        put("sampler", UUID.randomUUID(), now("MOVED", code, "place", "van"))
                .statusCode(409)
                .body("code", equalTo("DESTROYED"));
    }

    @Test
    void whatWasDestroyedAtALaboratoryDoesNotComeBack() {
        String code = atTheLaboratory();
        put("liaison", UUID.randomUUID(), now("DESTROYED", code, "reason", "incinerated"))
                .statusCode(201);
        put("liaison", UUID.randomUUID(), now("RETURNED", code, "reason", "archive"))
                .statusCode(409)
                .body("code", equalTo("DESTROYED"));
        chain("auditor", code).body("custodian", equalTo(SeasonFixture.LABORATORY));
    }

    @Test
    void nothingIsCorrectedBeforeItWasCollected() {
        String code = fixture.collected(1, collectedAt).get(0);
        UUID id = UUID.randomUUID();
        put("sampler", id, event("TEMPERATURE_READ", code, "temperatureCelsius", 4.5))
                .statusCode(201);
        Map<String, Object> correction = at(collectedAt.minusSeconds(60), "CORRECTED", code, "temperatureCelsius", 5.5);
        correction.put("corrects", id.toString());
        correction.put("reason", "misread");
        put("sampler", UUID.randomUUID(), correction)
                .statusCode(422)
                .body("errors[0].rule", equalTo("BEFORE_COLLECTION"));
    }

    @Test
    void aStoreTakesInWithoutAnOfferFromItsPeopleOnly() {
        String code = fixture.collected(1, collectedAt).get(0);
        put("sampler", UUID.randomUUID(), event("STORED", code, "place", SeasonFixture.STORE))
                .statusCode(201);
        chain("auditor", code).body("custodian", equalTo(SeasonFixture.STORE)).body("custodianKind", equalTo("STORE"));
        put("liaison", UUID.randomUUID(), now("TEMPERATURE_READ", code, "temperatureCelsius", -20))
                .statusCode(201);
        put("coordinator", UUID.randomUUID(), now("TEMPERATURE_READ", code, "temperatureCelsius", -20))
                .statusCode(409);
    }

    @Test
    void whatTheLaboratoryDoesIsNotForEverybody() {
        String code = atTheLaboratory();
        put("liaison", UUID.randomUUID(), now("FORWARDED", code, "place", SeasonFixture.CONFIRMING_LABORATORY))
                .statusCode(201);
        chain("liaison", code)
                .body("custodian", equalTo(SeasonFixture.CONFIRMING_LABORATORY))
                .body("events[1].carrier", equalTo("Invented Express"))
                .body("events.kind", hasItem("FORWARDED"));
        chain("sampler", code)
                .body("custodian", equalTo(SeasonFixture.LABORATORY))
                .body("verified", equalTo(true))
                .body("events.kind", contains("COLLECTED", "SHIPPED", "RECEIVED", "AT_LABORATORY"))
                .body("events[3].counterparty", nullValue());
        // Then warm in the hands of a courier: what came after the first laboratory is not told, nor what was wrong
        // with it.
        Map<String, Object> onwards = new HashMap<>(Map.of(
                "codes",
                List.of(code),
                "to",
                SeasonFixture.PARTY,
                "signedBy",
                "R. Okonedo",
                "occurredAt",
                clock.instant().toString()));
        String handOver = UUID.randomUUID().toString();
        json("liaison")
                .body(onwards)
                .put("/api/v1/hand-overs/" + handOver)
                .then()
                .statusCode(201);
        as("auditor").get("/api/v1/hand-overs").then().body("items.id", hasItem(handOver));
        as("auditor").get("/api/v1/hand-overs/" + handOver).then().statusCode(200);
        for (String other : List.of("sampler", "epidemiologist")) {
            as(other).get("/api/v1/hand-overs").then().statusCode(200).body("items.id", not(hasItem(handOver)));
            as(other).get("/api/v1/hand-overs/" + handOver).then().statusCode(404);
        }
        put("liaison", UUID.randomUUID(), now("TAMPER_SEAL_CHECKED", code, "tamperSeal", "TS 9"))
                .statusCode(201);
        chain("liaison", code)
                .body("custodian", equalTo(SeasonFixture.PARTY))
                .body("sealMismatches", hasSize(1))
                .body("discrepancies", hasSize(1));
        chain("sampler", code)
                .body("custodian", equalTo(SeasonFixture.LABORATORY))
                .body("sealMismatches", empty())
                .body("discrepancies", empty());
        put("liaison", UUID.randomUUID(), now("RETURNED", code, "reason", "archive"))
                .statusCode(201);
        chain("auditor", code).body("custodian", equalTo("T_LIAISON"));
        put("liaison", UUID.randomUUID(), now("RETURNED", code, "reason", "archive"))
                .statusCode(409)
                .body("code", equalTo("NOT_WITH_A_PARTY"));
    }

    @Test
    void aDiscrepancyIsOpenedChangedAndSettled() {
        String code = fixture.collected(1, collectedAt).get(0);
        UUID id = UUID.randomUUID();
        Map<String, Object> body = new HashMap<>(Map.of(
                "code", code, "kind", "DAMAGED", "owner", "liaison", "dueOn", "2026-12-24", "evidence", "cap off"));
        discrepancy("liaison", id, null, body).statusCode(201).body("owner", equalTo("T_LIAISON"));
        discrepancy("liaison", id, null, body).statusCode(200);
        body.put("outcome", "ACCEPTED_WITH_DISCLAIMER");
        discrepancy("liaison", id, null, body).statusCode(409);
        discrepancy("sampler", id, "\"0\"", body).statusCode(403).body("code", equalTo("NOT_YOURS"));
        discrepancy("liaison", id, "\"0\"", body).statusCode(200).body("closedAt", notNullValue());
        chain("auditor", code)
                .body("discrepancies", empty())
                .body("events.kind", contains("COLLECTED", "DISCREPANCY_OPENED", "DISCREPANCY_RESOLVED"))
                .body("events[1].evidence", equalTo("cap off"))
                .body("events[2].outcome", equalTo("ACCEPTED_WITH_DISCLAIMER"));
        as("auditor")
                .get("/api/v1/discrepancies?open=false&code=" + code)
                .then()
                .statusCode(200)
                .body("items.id", contains(id.toString()));
        as("epidemiologist").get("/api/v1/discrepancies/" + id).then().statusCode(403);
        as("notifier").get("/api/v1/discrepancies").then().statusCode(403);
        as("sampler").get("/api/v1/discrepancies/" + id).then().statusCode(403).body("code", equalTo("NOT_YOURS"));
        as("sampler").get("/api/v1/discrepancies?code=" + code).then().body("items", empty());
        body.put("owner", SeasonFixture.STORE);
        discrepancy("liaison", UUID.randomUUID(), null, body).statusCode(422).body("code", equalTo("OWNER_UNKNOWN"));
        body.put("kind", "ODD");
        discrepancy("liaison", UUID.randomUUID(), null, body).statusCode(422).body("errors[0].field", equalTo("kind"));
    }

    @Test
    void aCodeWithoutCustodyIsNotFoundAndNoCodeIsRefused() {
        String label = fixture.labels(1, Part.NODE_LEFT).get(0);
        chain("auditor", label).statusCode(404).body("code", equalTo("NOT_IN_CUSTODY"));
        chain("auditor", "ABC").statusCode(422);
        String foreign =
                new org.dentary.codes.Minting().mint().label(Part.NODE_LEFT).value();
        chain("auditor", foreign).statusCode(404).body("code", equalTo("LABEL_UNKNOWN"));
        io.restassured.RestAssured.given()
                .get("/api/v1/specimens/" + label + "/custody")
                .then()
                .statusCode(401);
    }

    private String atTheLaboratory() {
        String code = fixture.collected(1, collectedAt).get(0);
        fixture.as("sampler");
        parcels.ship(new Shipment(
                List.of(code),
                "Invented Express",
                "W-9",
                collectedAt.plusSeconds(60),
                null,
                null,
                UUID.randomUUID(),
                null,
                List.of()));
        fixture.as("liaison");
        parcels.receive(new Arrival(
                List.of(code),
                SeasonFixture.LABORATORY,
                collectedAt.plusSeconds(120),
                null,
                null,
                UUID.randomUUID(),
                null));
        return code;
    }

    private Map<String, Object> event(String kind, String code, String field, Object value) {
        return at(collectedAt.plusSeconds(600), kind, code, field, value);
    }

    private Map<String, Object> now(String kind, String code, String field, Object value) {
        return at(clock.instant(), kind, code, field, value);
    }

    private static Map<String, Object> at(Instant at, String kind, String code, String field, Object value) {
        Map<String, Object> body = new HashMap<>();
        body.put("codes", List.of(code));
        body.put("kind", kind);
        body.put("occurredAt", at.toString());
        body.put(field, value);
        return body;
    }

    private void missing(String code, String kind, String field) {
        Map<String, Object> body = event(kind, code, "sensor", "probe 2");
        put("sampler", UUID.randomUUID(), body).statusCode(422).body("errors.field", hasItem(field));
    }

    private static ValidatableResponse put(String account, UUID id, Map<String, Object> body) {
        return json(account).body(body).put("/api/v1/custody-events/" + id).then();
    }

    private static ValidatableResponse discrepancy(String account, UUID id, String ifMatch, Map<String, Object> body) {
        var request = json(account).body(body);
        return (ifMatch == null ? request : request.header("If-Match", ifMatch))
                .put("/api/v1/discrepancies/" + id)
                .then();
    }

    private static ValidatableResponse chain(String account, String code) {
        return as(account).get("/api/v1/specimens/" + code + "/custody").then();
    }
}
