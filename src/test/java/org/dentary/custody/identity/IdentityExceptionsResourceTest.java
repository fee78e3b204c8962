package org.dentary.custody.identity;

import static org.dentary.custody.Http.as;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** Who may vouch for a mislabeled specimen, when, and what is refused. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class IdentityExceptionsResourceTest {
    private static final String PATH = "/api/v1/identity-exceptions/";

    @Inject
    IdentityFixture people;

    @Inject
    EntityManager entities;

    private String aReceivedNode() {
        return people.received(SeasonFixture.UNIT).label(Part.NODE_LEFT);
    }

    @Test
    void onePersonVouchesAnotherGrantsAndNeitherIsEverChanged() {
        String code = aReceivedNode();
        UUID id = UUID.randomUUID();
        ObjectNode body = people.asking(code);
        people.asks("liaison", id, body)
                .statusCode(201)
                .body("state", equalTo("OPEN"))
                .body("askedBy", equalTo("T_LIAISON"))
                .body("problem", equalTo("LABEL_DISAGREES_WITH_LIST"))
                .body("evidence", containsString("not on the list"))
                .body("decidedBy", nullValue());
        people.asks("liaison", id, body).statusCode(200).body("state", equalTo("OPEN"));
        people.asks("liaison", id, people.asking(code).put("evidence", "something else"))
                .statusCode(409)
                .body("code", equalTo("ALREADY_RECORDED"));
        people.decides("coordinator", id, people.deciding(true))
                .statusCode(200)
                .body("state", equalTo("GRANTED"))
                .body("decidedByName", equalTo("Test coordinator"))
                .body("decisionReason", equalTo("compared jar, list and stub"));
        people.decides("coordinator", id, people.deciding(true)).statusCode(200);
        for (boolean granted : new boolean[] {true, false}) {
            people.decides("epidemiologist", id, people.deciding(granted))
                    .statusCode(409)
                    .body("code", equalTo("DECIDED_ALREADY"));
        }
        people.decides("coordinator", id, people.deciding(false))
                .statusCode(409)
                .body("detail", containsString("Test coordinator"));
        people.asks("liaison", UUID.randomUUID(), people.asking(code))
                .statusCode(409)
                .body("code", equalTo("EXCEPTION_GRANTED"));
        people.asks("liaison", id, body).statusCode(200).body("state", equalTo("GRANTED"));
    }

    @Test
    void whatIsMissingOrWrongIsNamedAndNothingIsWritten() {
        String code = aReceivedNode();
        ObjectNode empty = people.asking(code).put("irreplaceable", " ").put("evidence", "");
        empty.remove("problem");
        people.asks("liaison", UUID.randomUUID(), empty)
                .statusCode(422)
                .contentType("application/problem+json")
                .body("errors.field", hasItems("irreplaceable", "evidence", "problem"));
        ObjectNode other = people.asking(code).put("problem", "OTHER");
        other.remove("problemText");
        people.asks("liaison", UUID.randomUUID(), other)
                .statusCode(422)
                .body("errors[0].field", equalTo("problemText"));
        people.asks("liaison", UUID.randomUUID(), people.asking("not a code"))
                .statusCode(422)
                .body("errors[0].field", equalTo("code"));
        String unused = people.taken(SeasonFixture.UNIT).label(Part.NODE_RIGHT);
        people.asks("liaison", UUID.randomUUID(), people.asking(unused))
                .statusCode(422)
                .body("code", equalTo("NOT_A_SPECIMEN"));
        String notThere = people.taken(SeasonFixture.UNIT).label(Part.NODE_LEFT);
        people.asks("liaison", UUID.randomUUID(), people.asking(notThere))
                .statusCode(409)
                .body("code", equalTo("NOT_RECEIVED"));
        people.asks(
                        "liaison",
                        UUID.randomUUID(),
                        people.asking(code).put("discrepancy", UUID.randomUUID().toString()))
                .statusCode(422)
                .body("errors[0].rule", equalTo("DISCREPANCY_UNKNOWN"));
        people.asks("liaison", UUID.randomUUID(), people.asking(code).put("password", "wrong"))
                .statusCode(422)
                .body("errors[0].field", equalTo("password"))
                .body("errors[0].rule", equalTo("SIGNATURE_WRONG"));
        as("auditor").get(PATH + "?code=" + code).then().statusCode(200).body("items", hasSize(0));
        as("auditor").get(PATH + UUID.randomUUID()).then().statusCode(404);
        as("auditor").get(PATH + "?state=MAYBE").then().statusCode(422);
    }

    @Test
    void nobodyDecidesWhatTheyAskedForAndARoleWithoutTheRightDoesNeither() {
        String code = aReceivedNode();
        UUID id = UUID.randomUUID();
        for (String account : List.of("sampler", "epidemiologist", "notifier", "auditor")) {
            people.asks(account, UUID.randomUUID(), people.asking(code)).statusCode(403);
        }
        people.asks("coordinator", id, people.asking(code)).statusCode(201);
        people.asks("liaison", UUID.randomUUID(), people.asking(code))
                .statusCode(409)
                .body("code", equalTo("EXCEPTION_OPEN"));
        people.decides("coordinator", id, people.deciding(true))
                .statusCode(403)
                .body("code", equalTo("SECOND_PERSON_NEEDED"));
        for (String account : List.of("sampler", "liaison", "notifier", "auditor")) {
            people.decides(account, id, people.deciding(true)).statusCode(403);
        }
        people.decides("epidemiologist", id, people.deciding(true).put("password", "wrong"))
                .statusCode(422)
                .body("errors[0].rule", equalTo("SIGNATURE_WRONG"));
        ObjectNode unsaid = people.deciding(true);
        unsaid.remove(List.of("granted", "reason"));
        people.decides("epidemiologist", id, unsaid)
                .statusCode(422)
                .body("errors.field", hasItems("granted", "reason"));
        people.decides("epidemiologist", UUID.randomUUID(), people.deciding(true))
                .statusCode(404);
        people.decides("coordinator-two", id, people.deciding(false))
                .statusCode(200)
                .body("state", equalTo("REFUSED"));
        UUID again = UUID.randomUUID();
        people.asks("liaison", again, people.asking(code).put("evidence", "the missing stub was found in the bag"))
                .statusCode(201);
        people.granted(again);
    }

    @Test
    void aSharedDevicesAccountSignsNothing() {
        org.dentary.platform.account.Account shared = new org.dentary.platform.account.Account(
                "device", null, org.dentary.platform.account.Role.LIAISON, List.of("*"));
        assertEquals(
                "SIGNATURE_NEEDS_A_PERSON",
                assertThrows(org.dentary.platform.problem.NotAllowed.class, () -> IdentityRules.requirePerson(shared))
                        .code());
    }

    @Test
    void theSpecimensChainTellsOfBothWithoutTheirTextsAndThePasswordIsNowhere() {
        String code = aReceivedNode();
        UUID id = people.asked(code);
        people.granted(id);
        as("sampler")
                .get("/api/v1/specimens/" + code + "/custody")
                .then()
                .statusCode(200)
                .body("verified", equalTo(true))
                .body("events.kind", hasItems("IDENTITY_EXCEPTION_ASKED", "IDENTITY_EXCEPTION_GRANTED"))
                .body("identityExceptions.id", contains(id.toString()))
                .body("identityExceptions[0].state", equalTo("GRANTED"));
        List<String> bytes = bytes(code);
        String asked = only(bytes, "IDENTITY_EXCEPTION_ASKED");
        assertTrue(asked.contains(id.toString()) && asked.contains("\"signedAs\":\"liaison\""), asked);
        assertFalse(asked.contains("carcass") || asked.contains("stub") || asked.contains("says 7G"), asked);
        assertFalse(asked.contains("password") || asked.contains("\"" + SeasonFixture.PASSWORD + "\""), asked);
        String granted = only(bytes, "IDENTITY_EXCEPTION_GRANTED");
        assertTrue(granted.contains("\"signedAs\":\"coordinator\"") && !granted.contains("compared"), granted);
    }

    private static String only(List<String> bytes, String kind) {
        return bytes.stream().filter(each -> each.contains(kind)).findFirst().orElseThrow();
    }

    @SuppressWarnings("unchecked")
    private List<String> bytes(String code) {
        return QuarkusTransaction.requiringNew()
                .call(() -> entities.createNativeQuery(
                                "select bytes from ledger_event where chain = :code order by sequence")
                        .setParameter("code", code)
                        .getResultList());
    }

    /** What the service itself could still do wrong, its database refuses: a decision by who asked, a second decision. */
    @Test
    void theDatabaseRefusesADecisionByWhoAskedAndASecondOne() {
        UUID id = people.asked(aReceivedNode());
        String insert = "insert into identity_exception_decision (exception, asked_by, granted, event, by_actor, at)"
                + " select id, asked_by, true, event, %s, now() from identity_exception where id = '" + id + "'";
        assertTrue(refusal(String.format(insert, "asked_by")).contains("identity_exception_second_person"));
        String stranger = String.format(insert, "'T_COORDINATOR'").replace("select id, asked_by,", "select id, 'T_X',");
        assertTrue(refusal(stranger).contains("identity_exception_decision_of"));
        people.refused(id);
        assertTrue(refusal(String.format(insert, "'T_EPIDEMIOLOGIST'")).contains("identity_exception_decision_pkey"));
        assertTrue(refusal("update identity_exception set problem = 'OTHER' where id = '" + id + "'")
                .contains("permission denied"));
        assertTrue(refusal("delete from identity_exception_decision where exception = '" + id + "'")
                .contains("permission denied"));
    }

    private String refusal(String sql) {
        Throwable fault = assertThrows(
                RuntimeException.class,
                () -> QuarkusTransaction.requiringNew()
                        .run(() -> entities.createNativeQuery(sql).executeUpdate()));
        StringBuilder words = new StringBuilder();
        for (Throwable each = fault; each != null; each = each.getCause()) {
            words.append(each.getMessage()).append(' ');
        }
        return words.toString();
    }

    @Test
    void theListIsLeafedThroughByStateAndComesAsCsv() {
        UUID first = people.asked(aReceivedNode());
        String code = aReceivedNode();
        UUID second = people.asked(code);
        people.refused(second);
        as("notifier")
                .get(PATH + "?state=OPEN&limit=1000")
                .then()
                .statusCode(200)
                .body("items.id", hasItem(first.toString()))
                .body("items.id", not(hasItem(second.toString())))
                .body("items.state", everyItem(equalTo("OPEN")));
        Response page = as("auditor").get(PATH + "?askedBy=T_LIAISON&limit=1");
        page.then().statusCode(200).body("items.id", contains(second.toString()));
        String link = page.getHeader("Link");
        String next = link.substring(link.indexOf("<") + 1, link.indexOf(">"));
        as("auditor").urlEncodingEnabled(false).get(next).then().body("items.id", contains(first.toString()));
        as("auditor").get(PATH + "?code=" + code).then().body("items.id", contains(second.toString()));
        as("auditor").get(PATH + "?before=nonsense").then().statusCode(422);
        String csv = as("auditor")
                .get("/api/v1/custody/identity-exceptions.csv")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertTrue(csv.startsWith("id,code,kit,problem,"), csv);
        assertTrue(csv.contains(second + "," + code + ","), csv);
        assertTrue(csv.contains(",REFUSED,Test liaison,"), csv);
    }

    @Test
    void aDiscrepancyOfTheSameCodeIsNamedAndOneOfAnotherIsNot() {
        String code = aReceivedNode();
        UUID discrepancy = UUID.randomUUID();
        discrepancy(discrepancy, code);
        UUID elsewhere = UUID.randomUUID();
        discrepancy(elsewhere, aReceivedNode());
        people.asks("liaison", UUID.randomUUID(), people.asking(code).put("discrepancy", elsewhere.toString()))
                .statusCode(422)
                .body("errors[0].rule", equalTo("DISCREPANCY_OF_ANOTHER"));
        people.asks("liaison", UUID.randomUUID(), people.asking(code).put("discrepancy", discrepancy.toString()))
                .statusCode(201)
                .body("discrepancy", equalTo(discrepancy.toString()));
    }

    private static void discrepancy(UUID id, String code) {
        org.dentary.custody.Http.json("liaison")
                .body("{\"code\":\"" + code
                        + "\",\"kind\":\"WRONG_ID\",\"owner\":\"T_LIAISON\",\"dueOn\":\"2026-12-24\"}")
                .put("/api/v1/discrepancies/" + id)
                .then()
                .statusCode(201);
    }

    @Test
    void theHomePageCountsWhatWaitsForWhoeverMustDecide() {
        Deer deer = people.received(SeasonFixture.UNIT);
        int before = waiting("epidemiologist");
        int asker = waiting("coordinator");
        people.asks("coordinator", UUID.randomUUID(), people.asking(deer.label(Part.NODE_LEFT)))
                .statusCode(201);
        assertEquals(before + 1, waiting("epidemiologist"));
        assertEquals(asker, waiting("coordinator"), "one's own does not wait for oneself");
    }

    private static int waiting(String account) {
        String page = as(account).accept("text/html").get("/").asString();
        java.util.regex.Matcher tile = java.util.regex.Pattern.compile(
                        "(\\d+)[^0-9]{0,80}identity exceptions? to decide")
                .matcher(page.replaceAll("<[^>]*>", " ").replaceAll("\\s+", " "));
        assertTrue(tile.find(), page);
        return Integer.parseInt(tile.group(1));
    }
}
