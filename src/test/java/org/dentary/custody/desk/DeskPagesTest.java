package org.dentary.custody.desk;

import static org.dentary.custody.Http.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.custody.CustodyFixture;
import org.dentary.ledger.LedgerEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The desk: one form one hand-over, offers to whom one acts for, signatures, paper, what does not add up. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class DeskPagesTest {
    private static final String STROKES = "M20 100L60 40L100 160";

    @Inject
    CustodyFixture fixture;

    @Inject
    LedgerStore ledger;

    @Inject
    Clock clock;

    private Instant collectedAt;

    @BeforeEach
    void time() {
        collectedAt = clock.instant().minus(Duration.ofHours(3));
    }

    @Test
    void aButtonPressedTwiceHandsOverOnce() {
        List<String> codes = fixture.collected(2, collectedAt);
        String key = UUID.randomUUID().toString();
        Map<String, String> form =
                Map.of("key", key, "codes", "]C0" + codes.get(0) + "\n" + codes.get(1), "to", "liaison");
        post("sampler", "hand-overs", form).statusCode(303).header("Location", endsWith("/custody?done=" + key));
        post("sampler", "hand-overs", form).statusCode(303).header("Location", endsWith("/custody?done=" + key));
        assertEquals(2, ledger.chain(codes.get(0)).size());
        as("sampler")
                .get("/custody?done=" + key)
                .then()
                .body(containsString("2 codes offered to Test liaison. You have them until they are accepted."));
        List<String> more = fixture.collected(1, collectedAt);
        post("sampler", "hand-overs", Map.of("key", key, "codes", more.get(0), "to", "liaison"))
                .statusCode(409)
                .body(containsString("sent already with other content"));
        assertEquals(1, ledger.chain(more.get(0)).size());
        String taken = "hand-overs/" + key + "/acceptance";
        post("liaison", taken, Map.of("codes", String.join(" ", codes))).statusCode(303);
        post("liaison", taken, Map.of("codes", String.join(" ", codes))).statusCode(303);
        assertEquals(3, ledger.chain(codes.get(0)).size());
        as("liaison").get("/custody?done=" + key).then().body(containsString("2 codes are with Test liaison now."));
    }

    @Test
    void whoTakesOverIsNamedAsPeopleCallThem() {
        List<String> codes = fixture.collected(1, collectedAt);
        String key = UUID.randomUUID().toString();
        Map<String, String> form = Map.of("key", key, "codes", codes.get(0), "to", " test LIAISON ");
        post("sampler", "hand-overs", form).statusCode(303);
        post("sampler", "hand-overs", form).statusCode(303);
        as("sampler").get("/custody?done=" + key).then().body(containsString("1 code offered to Test liaison."));
        post(
                        "sampler",
                        "hand-overs",
                        Map.of("key", UUID.randomUUID().toString(), "codes", codes.get(0), "to", "Test nobody"))
                .statusCode(422)
                .body(containsString("value=\"Test nobody\""));
    }

    @Test
    void offersToAStoreOrALaboratoryAreShownToWhoActsForIt() {
        List<String> codes = fixture.collected(3, collectedAt);
        String toCoordinator = offered("sampler", codes.get(0), "coordinator");
        post("coordinator", "hand-overs/" + toCoordinator + "/acceptance", Map.of("codes", codes.get(0)))
                .statusCode(303);
        String toStore = offered("coordinator", codes.get(0), SeasonFixture.STORE);
        String toLaboratory = offered("sampler", codes.get(1), SeasonFixture.LABORATORY);
        String action = "/custody/hand-overs/%s/acceptance";
        desk("sampler").body(containsString(action.formatted(toStore))).body(containsString("for Station freezer"));
        desk("liaison")
                .body(containsString(action.formatted(toStore)))
                .body(containsString(action.formatted(toLaboratory)))
                .body(containsString("for Test laboratory"));
        desk("sampler-two")
                .body(not(containsString(action.formatted(toStore))))
                .body(not(containsString(action.formatted(toLaboratory))));
        desk("sampler").body(not(containsString(action.formatted(toLaboratory))));
        post("liaison", "hand-overs/" + toStore + "/acceptance", Map.of("codes", codes.get(0)))
                .statusCode(303);
        desk("sampler").body(containsString("In stores that I may use")).body(containsString(codes.get(0)));
        String csv = as("sampler").get("/api/v1/custody/holdings.csv").asString();
        assertTrue(csv.contains(codes.get(0) + ",NODE_LEFT,Station freezer,"), csv);
        assertTrue(csv.contains(codes.get(2) + ",NODE_LEFT,Test sampler,,Station 1,"), csv);
        assertFalse(
                as("sampler-two").get("/api/v1/custody/holdings.csv").asString().contains(codes.get(0)));
    }

    @Test
    void anOfferThatNobodyAcceptsIsShownToBothAsWaitingTooLong() {
        Instant long_ago = clock.instant().minus(Duration.ofDays(30));
        String code = fixture.collected(1, long_ago).get(0);
        UUID id = UUID.randomUUID();
        as("sampler")
                .contentType("application/json")
                .body("{\"codes\":[\"" + code + "\"],\"to\":\"liaison\",\"occurredAt\":\"" + long_ago.plusSeconds(60)
                        + "\",\"reason\":\"no signal\"}")
                .put("/api/v1/hand-overs/" + id)
                .then()
                .statusCode(201);
        desk("liaison").body(containsString("Waiting longer than the plan allows"));
        desk("sampler").body(containsString("Not accepted within the hours that the plan allows. Ask Test liaison"));
        String csv = as("sampler").get("/api/v1/custody/offers.csv").asString();
        assertTrue(csv.contains(id + ",BY_ME,Test sampler,Test liaison,") && csv.contains(",1,true"), csv);
        assertTrue(as("liaison").get("/api/v1/custody/offers.csv").asString().contains(id + ",TO_ME,"));
        post("sampler", "hand-overs/" + id + "/refusal", Map.of("reason", ""))
                .statusCode(422)
                .body(containsString("Say why"));
        post("sampler", "hand-overs/" + id + "/refusal", Map.of("reason", "the liaison is ill"))
                .statusCode(303);
        as("sampler").get("/custody?done=" + id).then().body(containsString("Withdrawn: they stay with Test sampler"));
    }

    @Test
    void whatIsNotCountedBecomesTheGiversDiscrepancyAndIsSettledOnAPage() {
        List<String> codes = fixture.collected(3, collectedAt);
        String id = offered("sampler", String.join("\n", codes), "liaison");
        post("liaison", "hand-overs/" + id + "/acceptance", Map.of("codes", codes.get(0) + " " + codes.get(1)))
                .statusCode(303);
        as("liaison")
                .get("/custody?done=" + id)
                .then()
                .body(containsString("2 of 3 codes are with Test liaison now; 1 not counted"));
        String missing = codes.get(2);
        String grouped = missing.substring(0, 4) + "-" + missing.substring(4, 8) + "-" + missing.substring(8);
        for (String reader : List.of("sampler", "liaison", "coordinator", "auditor")) {
            as(reader).get("/custody/discrepancies").then().statusCode(200).body(containsString(grouped));
        }
        as("sampler-two").get("/custody/discrepancies").then().statusCode(200).body(not(containsString(grouped)));
        for (String other : List.of("notifier", "epidemiologist")) {
            as(other).get("/custody/discrepancies").then().statusCode(403);
        }
        String csv = as("auditor").get("/api/v1/custody/discrepancies.csv").asString();
        assertTrue(csv.contains("," + missing + ",SHORT,Test sampler,"), csv);
        assertFalse(as("sampler-two")
                .get("/api/v1/custody/discrepancies.csv")
                .asString()
                .contains(missing));
        JsonPath open = as("sampler")
                .get("/api/v1/discrepancies?open=true&code=" + missing)
                .jsonPath();
        String discrepancy = "discrepancies/" + open.getString("items[0].id");
        post("sampler", discrepancy, Map.of("version", "0", "outcome", "", "evidence", "in my pocket"))
                .statusCode(422)
                .body(containsString("Say how it was settled"))
                .body(containsString("in my pocket"));
        Map<String, String> found = Map.of("version", "0", "outcome", "FOUND", "evidence", "in my pocket");
        post("auditor", discrepancy, found).statusCode(403);
        post("sampler-two", discrepancy, found).statusCode(403);
        post("sampler", discrepancy, found).statusCode(303);
        post("sampler", discrepancy, found).statusCode(303);
        as("sampler").get("/custody/discrepancies").then().body(not(containsString(grouped)));
        as("sampler")
                .get("/custody/discrepancies?all=true")
                .then()
                .body(containsString("<dt>Settled as</dt><dd>Found</dd>"));
        as("auditor")
                .get("/api/v1/specimens/" + missing + "/custody")
                .then()
                .body("discrepancies.size()", equalTo(0))
                .body("settled[0].outcome", equalTo("FOUND"))
                .body("settled[0].evidence", equalTo("offered and not counted. in my pocket"));
    }

    @Test
    void anOutsiderSignsOnTheScreenAndTheInkStaysOutsideTheLedger() {
        String code = fixture.collected(1, collectedAt).get(0);
        post(
                        "sampler",
                        "hand-overs",
                        Map.of(
                                "key",
                                UUID.randomUUID().toString(),
                                "codes",
                                code,
                                "to",
                                SeasonFixture.PARTY,
                                "signedBy",
                                "R. Okonedo",
                                "signature",
                                STROKES))
                .statusCode(303);
        JsonPath chain =
                as("auditor").get("/api/v1/specimens/" + code + "/custody").jsonPath();
        assertEquals("Test courier", chain.getString("custodianName"));
        assertEquals("R. Okonedo", chain.getString("events[-1].signedBy"));
        assertEquals(STROKES, chain.getString("events[-1].signature"));
        LedgerEvent signed = ledger.chain(code).get(2);
        assertFalse(signed.bytes().contains("Okonedo") || signed.bytes().contains("M20 100"), signed.bytes());
        assertTrue(ledger.erase(signed.id(), "signature"));
        JsonPath after =
                as("auditor").get("/api/v1/specimens/" + code + "/custody").jsonPath();
        assertNull(after.getString("events[-1].signature"));
        assertTrue(after.getBoolean("verified"), "what is erased breaks no chain");
    }

    @Test
    void refusesWhatIsNoSignatureAndKeepsWhatWasTyped() {
        String code = fixture.collected(1, collectedAt).get(0);
        for (String ink :
                List.of("<script>", "L10 10", "M10 10", "M10 10L601 10", "M10 10L20 201", "M1 1L2 2 ", "M1 1L2 2Z")) {
            ValidatableResponse answer = post(
                    "sampler",
                    "hand-overs",
                    Map.of(
                            "key",
                            UUID.randomUUID().toString(),
                            "codes",
                            code,
                            "to",
                            SeasonFixture.PARTY,
                            "signedBy",
                            "R. Okonedo",
                            "signature",
                            ink));
            if (ink.equals("M1 1L2 2 ")) {
                answer.statusCode(303);
            } else {
                answer.statusCode(422).body(containsString("R. Okonedo")).body(containsString(code));
                assertEquals(1, ledger.chain(code).size(), ink);
            }
            if (ink.equals("M1 1L2 2 ")) {
                code = fixture.collected(1, collectedAt).get(0);
            }
        }
        post(
                        "sampler",
                        "hand-overs",
                        Map.of(
                                "key",
                                UUID.randomUUID().toString(),
                                "codes",
                                code,
                                "to",
                                SeasonFixture.PARTY,
                                "signature",
                                STROKES))
                .statusCode(422)
                .body(containsString("write the name of who signed"));
    }

    @Test
    void aPaperFormIsEnteredLaterOnTheClockOfAStation() {
        String code = fixture.collected(1, collectedAt).get(0);
        LocalDateTime then = LocalDateTime.ofInstant(collectedAt.plusSeconds(1800), ZoneId.of("America/Denver"))
                .withNano(0);
        post(
                        "sampler",
                        "hand-overs",
                        Map.of(
                                "key",
                                UUID.randomUUID().toString(),
                                "codes",
                                code,
                                "to",
                                "liaison",
                                "paperForm",
                                "P-117",
                                "occurredAt",
                                then.toString(),
                                "zone",
                                "America/Denver"))
                .statusCode(303);
        JsonPath chain =
                as("auditor").get("/api/v1/specimens/" + code + "/custody").jsonPath();
        assertEquals("T_LIAISON", chain.getString("custodian"));
        assertEquals("P-117", chain.getString("events[-1].paperForm"));
        assertTrue(chain.getBoolean("events[-1].late"), "a paper form is always entered late");
        assertEquals(
                then.atZone(ZoneId.of("America/Denver")).toInstant(),
                Instant.parse(chain.getString("events[-1].occurredAt")));
        post(
                        "sampler",
                        "hand-overs",
                        Map.of("key", UUID.randomUUID().toString(), "codes", code, "to", "x", "occurredAt", "soon"))
                .statusCode(422)
                .body(containsString("is no day and time"));
    }

    @Test
    void theDeskIsForThoseWhoHandle() {
        for (String handler : List.of("sampler", "liaison", "coordinator")) {
            desk(handler);
        }
        for (String other : List.of("epidemiologist", "notifier", "auditor")) {
            as(other).get("/custody").then().statusCode(403);
            as(other).get("/api/v1/custody/holdings.csv").then().statusCode(403);
            as(other).get("/api/v1/custody/offers.csv").then().statusCode(403);
        }
    }

    private String offered(String giver, String codes, String to) {
        String key = UUID.randomUUID().toString();
        post(giver, "hand-overs", Map.of("key", key, "codes", codes, "to", to)).statusCode(303);
        return key;
    }

    private static ValidatableResponse desk(String account) {
        return as(account).get("/custody").then().statusCode(200);
    }

    private static ValidatableResponse post(String account, String path, Map<String, String> form) {
        return as(account)
                .redirects()
                .follow(false)
                .formParams(form)
                .post("/custody/" + path)
                .then();
    }
}
