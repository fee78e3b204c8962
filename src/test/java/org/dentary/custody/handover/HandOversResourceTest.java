package org.dentary.custody.handover;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.custody.Arrival;
import org.dentary.custody.CustodyFixture;
import org.dentary.custody.CustodyService;
import org.dentary.custody.HeadView;
import org.dentary.custody.ParcelService;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.RecordedEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class HandOversResourceTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    CustodyService custody;

    @Inject
    ParcelService parcels;

    @Inject
    LedgerStore ledger;

    @Inject
    Clock clock;

    private Instant now;
    private Instant collectedAt;

    @BeforeEach
    void time() {
        now = clock.instant();
        collectedAt = now.minus(Duration.ofHours(2));
    }

    @Test
    void custodyMovesWhenTheReceiverAccepts() {
        List<String> codes = fixture.collected(2, collectedAt);
        UUID id = UUID.randomUUID();
        offer("sampler", id, body(codes, "liaison"))
                .statusCode(201)
                .header("ETag", "\"0\"")
                .header("Cache-Control", "private, no-store")
                .body("state", equalTo("OFFERED"))
                .body("to", equalTo("T_LIAISON"))
                .body("offered", equalTo(2));
        assertEquals("T_SAMPLER", holder(codes.get(0)));
        offer("sampler", id, body(codes, "liaison")).statusCode(200);
        accept("liaison", id, codes).statusCode(200).body("state", equalTo("ACCEPTED"));
        assertEquals("T_LIAISON", holder(codes.get(0)));
        accept("liaison", id, codes).statusCode(200).body("state", equalTo("ACCEPTED"));
        accept("liaison", id, codes.subList(0, 1))
                .statusCode(409)
                .body("code", equalTo("WRONG_STATE"))
                .body("detail", containsString("ACCEPTED"));
        assertEquals(3, ledger.chain(codes.get(0)).size());
        as("auditor").get("/api/v1/hand-overs/" + id).then().statusCode(200).body("accepted", equalTo(2));
        as("auditor")
                .get("/api/v1/hand-overs?state=ACCEPTED")
                .then()
                .statusCode(200)
                .body("items.id", hasItem(id.toString()));
    }

    @Test
    void nobodyAcceptsTheirOwnOfferNorSomebodyElses() {
        List<String> codes = fixture.collected(1, collectedAt);
        UUID id = UUID.randomUUID();
        offer("sampler", id, body(codes, "T_LIAISON")).statusCode(201);
        accept("sampler", id, codes).statusCode(409).body("code", equalTo("OWN_OFFER"));
        accept("coordinator", id, codes).statusCode(403).body("code", equalTo("NOT_THE_RECEIVER"));
        accept("auditor", id, codes).statusCode(403);
        accept("liaison", UUID.randomUUID(), codes).statusCode(404).body("code", equalTo("HAND_OVER_UNKNOWN"));
        assertEquals("T_SAMPLER", holder(codes.get(0)));
        assertEquals(2, ledger.chain(codes.get(0)).size());
    }

    @Test
    void refusesWhatIsNotHeldOrOfferedAlreadyOrOnesOwn() {
        List<String> codes = fixture.collected(1, collectedAt);
        refused("liaison", body(codes, "sampler"), 409, "NOT_HELD");
        refused("sampler", body(codes, "sampler"), 409, "TO_ONESELF");
        offer("sampler", UUID.randomUUID(), body(codes, "liaison")).statusCode(201);
        refused("sampler", body(codes, "coordinator"), 409, "ALREADY_OFFERED");
        List<String> label = fixture.labels(1, Part.NODE_LEFT);
        refused("sampler", body(label, "liaison"), 409, "NOT_IN_CUSTODY");
    }

    @Test
    void refusesCodesThatAreNotOursAndSaysWhatLooksWrong() {
        List<String> codes = fixture.collected(1, collectedAt);
        String wrong = codes.get(0).substring(0, 9) + (codes.get(0).charAt(9) == '2' ? '3' : '2');
        refused("sampler", body(List.of(wrong), "liaison"), 422, "NOT_A_CODE")
                .body("errors[0].field", equalTo("codes[0]"));
        String foreign =
                new org.dentary.codes.Minting().mint().label(Part.NODE_LEFT).value();
        refused("sampler", body(List.of(codes.get(0), foreign), "liaison"), 422, "LABEL_UNKNOWN")
                .body("errors[0].field", equalTo("codes[1]"));
        refused("sampler", body(codes, "nobody-here"), 422, "CUSTODIAN_UNKNOWN");
        Map<String, Object> none = body(List.of(), "liaison");
        offer("sampler", UUID.randomUUID(), none).statusCode(422).body("errors[0].field", equalTo("codes"));
        Map<String, Object> unknown = body(codes, "liaison");
        unknown.put("colour", "red");
        offer("sampler", UUID.randomUUID(), unknown).statusCode(422).body("errors[0].field", equalTo("colour"));
    }

    @Test
    void refusesTimesThatCannotBeAndLatenessWithoutAReason() {
        List<String> codes = fixture.collected(1, now.minus(Duration.ofDays(2)));
        refused("sampler", at(codes, now.plus(Duration.ofHours(1)), null, null), 422, "IN_FUTURE");
        refused("sampler", at(codes, now.minus(Duration.ofDays(3)), null, "late"), 422, "BEFORE_COLLECTION");
        Instant yesterday = now.minus(Duration.ofHours(20));
        refused("sampler", at(codes, yesterday, null, null), 422, "LATE_NEEDS_REASON");
        offer("sampler", UUID.randomUUID(), at(codes, yesterday, null, "no signal on the road"))
                .statusCode(201);
        assertTrue(last(codes.get(0)).step().late());
        List<String> others = fixture.collected(1, now.minus(Duration.ofDays(2)));
        offer("sampler", UUID.randomUUID(), at(others, yesterday, yesterday.plusSeconds(60), null))
                .statusCode(201);
        assertTrue(!last(others.get(0)).step().late(), "entered on the device at once, though sent a day later");
    }

    @Test
    void whoHeldThenMayRecordItLaterAndWhoDidNotMayNot() {
        List<String> codes = fixture.collected(1, collectedAt);
        UUID id = UUID.randomUUID();
        offer("sampler", id, at(codes, collectedAt.plusSeconds(3600), null, null))
                .statusCode(201);
        accept("liaison", id, codes).statusCode(200);
        Map<String, Object> before = at(codes, collectedAt.plusSeconds(60), null, null);
        before.put("to", SeasonFixture.STORE);
        offer("liaison", UUID.randomUUID(), before).statusCode(409).body("code", equalTo("NOT_HELD"));
        String box = fixture.aBoxLabel();
        as("liaison").body(Map.of("place", SeasonFixture.STATION)).put("/api/v1/boxes/" + box);
        as("liaison")
                .put("/api/v1/boxes/" + box + "/contents/" + codes.get(0))
                .then()
                .statusCode(201);
        offer("sampler", UUID.randomUUID(), before).statusCode(201).body("state", equalTo("ACCEPTED"));
        assertTrue(last(codes.get(0)).step().late());
        HeadView head = custody.heads(codes).get(codes.get(0));
        assertEquals(
                List.of("T_LIAISON", SeasonFixture.STATION, box),
                List.of(head.custodian(), head.place(), head.box()),
                "what happened later still holds");
    }

    @Test
    void whatALaboratoryCountedInSinceTheOfferIsNoMoreTheGivers() {
        List<String> codes = fixture.collected(1, collectedAt);
        UUID id = UUID.randomUUID();
        offer("sampler", id, body(codes, "liaison")).statusCode(201);
        fixture.as("liaison");
        parcels.receive(new Arrival(
                codes, SeasonFixture.LABORATORY, collectedAt.plusSeconds(1200), null, null, UUID.randomUUID(), null));
        accept("liaison", id, codes).statusCode(409).body("code", equalTo("NO_LONGER_HELD"));
        assertEquals(SeasonFixture.LABORATORY, holder(codes.get(0)));
        // Counted before the laboratory did, entered after: told, and the laboratory keeps it.
        as("liaison")
                .body(Map.of(
                        "codes",
                        codes,
                        "occurredAt",
                        collectedAt.plusSeconds(900).toString()))
                .post("/api/v1/hand-overs/" + id + "/acceptance")
                .then()
                .statusCode(200);
        assertEquals(SeasonFixture.LABORATORY, holder(codes.get(0)));
    }

    @Test
    void anOfferIsFixedAndIfMatchIsHeeded() {
        List<String> codes = fixture.collected(2, collectedAt);
        UUID id = UUID.randomUUID();
        offer("sampler", id, body(codes, "liaison")).statusCode(201);
        Map<String, Object> other = body(codes.subList(0, 1), "liaison");
        offer("sampler", id, other).statusCode(409).body("code", equalTo("ALREADY_RECORDED"));
        as("sampler")
                .header("If-Match", "\"7\"")
                .body(other)
                .put("/api/v1/hand-overs/" + id)
                .then()
                .statusCode(412);
        as("sampler")
                .header("If-Match", "\"0\"")
                .body(other)
                .put("/api/v1/hand-overs/" + id)
                .then()
                .statusCode(409)
                .body("code", equalTo("OFFER_FIXED"));
    }

    @Test
    void countingFindsWhatIsShortAndWhatIsOver() {
        List<String> codes = fixture.collected(3, collectedAt);
        String stray = fixture.collected(1, collectedAt).get(0);
        UUID id = UUID.randomUUID();
        offer("sampler", id, body(codes, "liaison")).statusCode(201);
        accept("liaison", id, List.of(codes.get(0), codes.get(1), stray))
                .statusCode(200)
                .body("state", equalTo("PART_ACCEPTED"))
                .body("accepted", equalTo(2))
                .body("missing", equalTo(1));
        assertEquals("T_SAMPLER", holder(codes.get(2)));
        assertEquals("T_SAMPLER", holder(stray));
        assertEquals(CustodyKind.DISCREPANCY_OPENED, last(codes.get(2)).kind());
        as("liaison")
                .get("/api/v1/discrepancies?subject=" + id)
                .then()
                .statusCode(200)
                .body("items.kind", containsInAnyOrder("SHORT", "OVER"))
                .body("items.code", containsInAnyOrder(codes.get(2), stray));
        offer("sampler", UUID.randomUUID(), body(codes.subList(2, 3), "liaison"))
                .statusCode(201);
    }

    @Test
    void acceptingNothingOfItIsNoAcceptance() {
        List<String> codes = fixture.collected(1, collectedAt);
        List<String> others = fixture.collected(1, collectedAt);
        UUID id = UUID.randomUUID();
        offer("sampler", id, body(codes, "liaison")).statusCode(201);
        accept("liaison", id, others).statusCode(422).body("code", equalTo("NONE_OFFERED"));
        accept("liaison", id, List.of()).statusCode(422);
    }

    @Test
    void theReceiverRefusesAndTheGiverWithdraws() {
        List<String> codes = fixture.collected(2, collectedAt);
        UUID refused = UUID.randomUUID();
        offer("sampler", refused, body(codes, "liaison")).statusCode(201);
        refuse("liaison", refused, codes, null).statusCode(422).body("errors[0].field", equalTo("reason"));
        refuse("coordinator", refused, codes, "leaking").statusCode(403);
        refuse("liaison", refused, codes.subList(0, 1), "leaking")
                .statusCode(200)
                .body("state", equalTo("OFFERED"))
                .body("refused", equalTo(1));
        refuse("liaison", refused, codes.subList(1, 2), "leaking too")
                .statusCode(200)
                .body("state", equalTo("REFUSED"));
        refuse("liaison", refused, codes.subList(1, 2), "leaking too").statusCode(200);
        accept("liaison", refused, codes).statusCode(409).body("detail", containsString("REFUSED"));
        UUID withdrawn = UUID.randomUUID();
        offer("sampler", withdrawn, body(codes, "liaison")).statusCode(201);
        refuse("sampler", withdrawn, List.of(), "wrong van").statusCode(200).body("state", equalTo("WITHDRAWN"));
        assertEquals("T_SAMPLER", holder(codes.get(0)));
    }

    @Test
    void aStoresPeoplePutInAndTakeOutWithoutAnOffer() {
        List<String> codes = fixture.collected(1, collectedAt);
        offer("sampler", UUID.randomUUID(), body(codes, SeasonFixture.STORE))
                .statusCode(201)
                .body("state", equalTo("ACCEPTED"));
        assertEquals(SeasonFixture.STORE, holder(codes.get(0)));
        assertEquals(CustodyKind.STORED, last(codes.get(0)).kind());
        refused("coordinator", body(codes, "coordinator"), 409, "NOT_HELD");
        offer("liaison", UUID.randomUUID(), body(codes, "liaison"))
                .statusCode(201)
                .body("state", equalTo("ACCEPTED"));
        assertEquals("T_LIAISON", holder(codes.get(0)));
        offer("liaison", UUID.randomUUID(), body(codes, "coordinator")).statusCode(201);
    }

    @Test
    void aPartySignsOnTheScreenAndPaperIsAlwaysLate() {
        List<String> codes = fixture.collected(1, collectedAt);
        Map<String, Object> signed = body(codes, SeasonFixture.PARTY);
        signed.put("signedBy", "Driver of van 4");
        offer("sampler", UUID.randomUUID(), signed).statusCode(201).body("state", equalTo("ACCEPTED"));
        assertEquals(SeasonFixture.PARTY, holder(codes.get(0)));
        List<String> others = fixture.collected(1, collectedAt);
        Map<String, Object> forPerson = body(others, "liaison");
        forPerson.put("signedBy", "somebody");
        refused("sampler", forPerson, 422, "SIGNATURE_NOT_TAKEN");
        Map<String, Object> paper = body(others, "liaison");
        paper.put("paperForm", "F-77");
        offer("sampler", UUID.randomUUID(), paper).statusCode(201).body("state", equalTo("ACCEPTED"));
        assertTrue(last(others.get(0)).step().late());
        assertEquals("F-77", last(others.get(0)).field("paperForm"));
        assertEquals("T_LIAISON", holder(others.get(0)));
    }

    @Test
    void freeTextEntersTheLedgerAsADigestOnly() {
        List<String> codes = fixture.collected(1, collectedAt);
        Map<String, Object> offer = body(codes, "liaison");
        offer.put("reason", "the hunter's cousin drives");
        offer("sampler", UUID.randomUUID(), offer).statusCode(201);
        RecordedEvent event = last(codes.get(0));
        assertTrue(!event.event().bytes().contains("cousin"));
        assertEquals(64, event.digest("reason").length());
        assertEquals(
                "the hunter's cousin drives",
                ledger.secrets(List.of(event.event().id()))
                        .get(event.event().id())
                        .get("reason")
                        .text());
    }

    private Map<String, Object> body(List<String> codes, String to) {
        Map<String, Object> body = at(codes, collectedAt.plusSeconds(600), null, null);
        body.put("to", to);
        return body;
    }

    private static Map<String, Object> at(List<String> codes, Instant occurredAt, Instant enteredAt, String reason) {
        Map<String, Object> body = new HashMap<>();
        body.put("codes", codes);
        body.put("to", "liaison");
        body.put("place", SeasonFixture.STATION);
        body.put("occurredAt", occurredAt.toString());
        body.put("enteredAt", enteredAt == null ? null : enteredAt.toString());
        body.put("reason", reason);
        return body;
    }

    private static RequestSpecification as(String account) {
        return given().auth()
                .preemptive()
                .basic(account, SeasonFixture.PASSWORD)
                .contentType("application/json");
    }

    private static ValidatableResponse offer(String account, UUID id, Map<String, Object> body) {
        return as(account).body(body).put("/api/v1/hand-overs/" + id).then();
    }

    private static ValidatableResponse refused(String account, Map<String, Object> body, int status, String code) {
        UUID id = UUID.randomUUID();
        ValidatableResponse answer =
                offer(account, id, body).statusCode(status).contentType("application/problem+json");
        as("auditor").get("/api/v1/hand-overs/" + id).then().statusCode(404);
        return answer.body("code", equalTo(code));
    }

    private ValidatableResponse accept(String account, UUID id, List<String> codes) {
        return as(account)
                .body(Map.of("codes", codes, "occurredAt", now.toString()))
                .post("/api/v1/hand-overs/" + id + "/acceptance")
                .then();
    }

    private static ValidatableResponse refuse(String account, UUID id, List<String> codes, String reason) {
        Map<String, Object> body = new HashMap<>(Map.of("codes", new ArrayList<>(codes)));
        body.put("reason", reason);
        return as(account)
                .body(body)
                .post("/api/v1/hand-overs/" + id + "/refusal")
                .then();
    }

    private String holder(String code) {
        return custody.heads(List.of(code)).get(code).custodian();
    }

    private RecordedEvent last(String code) {
        var chain = ledger.chain(code);
        return RecordedEvent.of(chain.get(chain.size() - 1));
    }
}
